package glb

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"brimline/mesh"
	"brimline/sheet"
)

// Write writes the scene; one without anything to show is a valid file of an empty scene. An error names
// the body and what is wrong with it, or is the writer's own; then nothing has been written but what
// the writer took.
func Write(w io.Writer, s Scene) error {
	bodies, err := s.shown()
	if err != nil {
		return fmt.Errorf("glb of %q: %w", s.Title, err)
	}
	b := &builder{origin: origin(bodies)}
	b.doc = document{Asset: asset{Version: "2.0", Generator: "brimline"}, Scenes: []scene{{Name: sheet.Clean(s.Title)}}}
	if len(bodies) > 0 {
		b.all(s.Title, bodies)
	}
	text, err := json.Marshal(b.doc)
	if err != nil {
		return fmt.Errorf("glb of %q: %w", s.Title, err)
	}
	out, err := container(text, b.bin.Bytes())
	if err != nil {
		return fmt.Errorf("glb of %q: %w", s.Title, err)
	}
	_, err = w.Write(out)
	return err
}

// builder gathers the two parts of a file.
type builder struct {
	doc    document
	bin    bytes.Buffer
	origin mesh.Point3
}

// all writes the bodies below one node that stands at the origin chosen.
func (b *builder) all(title string, bodies []Body) {
	root := node{Name: sheet.Clean(title)}
	if o := b.origin; o != (mesh.Point3{}) {
		root.Translation = &[3]float64{o.X, o.Z, -o.Y + 0}
	}
	for i := range bodies {
		root.Children = append(root.Children, i+1)
	}
	b.doc.Nodes = []node{root}
	b.doc.Scenes[0].Nodes = []int{0}
	for i := range bodies {
		b.body(&bodies[i])
	}
	b.doc.Buffers = []buffer{{b.bin.Len()}}
}

// body adds one with its node, its mesh and its material.
func (b *builder) body(o *Body) {
	name := sheet.Clean(o.Name)
	mode, indices := modeTriangles, make([]int32, 0, 3*len(o.Triangles))
	for _, t := range o.Triangles {
		indices = append(indices, t[:]...)
	}
	for _, l := range o.Lines {
		mode = modeLines
		for k := 1; k < len(l); k++ {
			indices = append(indices, l[k-1], l[k])
		}
	}
	p := primitive{Attributes: map[string]int{"POSITION": b.positions(o.Points)}, Indices: b.indices(indices), Material: len(b.doc.Materials), Mode: mode}
	m := material{Name: name, Surface: metal{o.Paint, 0, 1}, DoubleSided: mode == modeTriangles}
	if o.Paint[3] < 1 {
		m.AlphaMode = "BLEND"
	}
	at := len(b.doc.Meshes)
	b.doc.Materials = append(b.doc.Materials, m)
	b.doc.Meshes = append(b.doc.Meshes, body{name, []primitive{p}})
	b.doc.Nodes = append(b.doc.Nodes, node{Name: name, Mesh: &at})
}

// positions adds points, turned so that y is up (section 3.4), with their least and greatest
// coordinates, which the format asks for (section 3.6.2.5).
func (b *builder) positions(points []mesh.Point3) int {
	low := [3]float32{math.MaxFloat32, math.MaxFloat32, math.MaxFloat32}
	high := [3]float32{-math.MaxFloat32, -math.MaxFloat32, -math.MaxFloat32}
	start := b.bin.Len()
	for _, p := range points {
		q := [3]float32{float32(p.X - b.origin.X), float32(p.Z - b.origin.Z), float32(b.origin.Y - p.Y)}
		for k, x := range q {
			low[k], high[k] = min(low[k], x), max(high[k], x)
			b.word(math.Float32bits(x))
		}
	}
	b.view(start, vertexTarget)
	return b.accessor(accessor{Component: float32Component, Count: len(points), Type: "VEC3", Min: low[:], Max: high[:]})
}

func (b *builder) indices(list []int32) int {
	start := b.bin.Len()
	for _, i := range list {
		b.word(uint32(i))
	}
	b.view(start, indexTarget)
	return b.accessor(accessor{Component: uint32Component, Count: len(list), Type: "SCALAR"})
}

// word appends four bytes, the lowest first (section 3.6.1.1).
func (b *builder) word(x uint32) {
	b.bin.Write(binary.LittleEndian.AppendUint32(nil, x))
}

func (b *builder) view(start, target int) {
	b.doc.BufferViews = append(b.doc.BufferViews, view{Offset: start, Length: b.bin.Len() - start, Target: target})
}

// accessor adds one over the last view and gives its number.
func (b *builder) accessor(a accessor) int {
	a.View = len(b.doc.BufferViews) - 1
	b.doc.Accessors = append(b.doc.Accessors, a)
	return len(b.doc.Accessors) - 1
}

// The words of the container (section 4.4): "glTF", "JSON" and "BIN" in bytes.
const (
	magic    = 0x46546C67
	chunkDoc = 0x4E4F534A
	chunkBin = 0x004E4942
)

// container is header and chunks, each filled up to four bytes: the JSON with spaces, the other, whose
// numbers are words, is full.
func container(text, bin []byte) ([]byte, error) {
	text = append(text, strings.Repeat(" ", (4-len(text)%4)%4)...)
	total := 12 + 8 + len(text)
	if len(bin) > 0 {
		total += 8 + len(bin)
	}
	if uint64(total) > math.MaxUint32 {
		return nil, errLarge
	}
	var out []byte
	word := func(x uint32) { out = binary.LittleEndian.AppendUint32(out, x) }
	word(magic)
	word(2)
	word(uint32(total))
	word(uint32(len(text)))
	word(chunkDoc)
	out = append(out, text...)
	if len(bin) > 0 {
		word(uint32(len(bin)))
		word(chunkBin)
		out = append(out, bin...)
	}
	return out, nil
}
