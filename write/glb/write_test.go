package glb_test

import (
	"bytes"
	"encoding/binary"
	"encoding/json"
	"io"
	"math"
	"strings"
	"testing"

	"brimline/mesh"
	"brimline/write/glb"
)

// box is a closed box whose faces look outward, and a line.
func box(x, y, z float64) glb.Scene {
	b := glb.Body{Name: "box “é”", Paint: glb.Paint{0.2, 0.4, 0.6, 1}}
	for i := range 8 {
		b.Points = append(b.Points, mesh.Point3{X: x + float64(i&1)*4, Y: y + float64(i>>1&1)*2, Z: z - float64(i>>2)*1.5})
	}
	for _, q := range [][4]int32{{0, 1, 3, 2}, {4, 6, 7, 5}, {0, 4, 5, 1}, {3, 7, 6, 2}, {0, 2, 6, 4}, {1, 5, 7, 3}} {
		b.Triangles = append(b.Triangles, [3]int32{q[0], q[1], q[2]}, [3]int32{q[0], q[2], q[3]})
	}
	line := glb.Body{Name: "line", Paint: glb.Paint{0, 0, 0, 0.5}, Points: b.Points[:4], Lines: [][]int32{{0, 1, 3}, {2, 0}}}
	return glb.Scene{Title: "Larch Court", Bodies: []glb.Body{b, {Name: "nothing"}, line}}
}

func written(t testing.TB, s glb.Scene) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := glb.Write(&out, s); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// part is a mesh read back: its places in the frame of the file, and its indices.
type part struct {
	name    string
	mode    int
	places  [][3]float64
	indices []uint32
}

// read takes a file apart by the specification, without the writer's types.
func read(t testing.TB, src []byte) []part {
	t.Helper()
	u := func(at int) int { return int(binary.LittleEndian.Uint32(src[at:])) }
	if string(src[:4]) != "glTF" || u(4) != 2 || u(8) != len(src) || string(src[16:20]) != "JSON" {
		t.Fatalf("header %q", src[:20])
	}
	n := u(12)
	var doc struct {
		Nodes []struct {
			Mesh        *int
			Translation [3]float64
		}
		Meshes []struct {
			Name       string
			Primitives []struct {
				Attributes struct{ POSITION int }
				Indices    int
				Mode       int
			}
		}
		Accessors   []struct{ BufferView, Count int }
		BufferViews []struct{ ByteOffset, ByteLength int }
	}
	if err := json.Unmarshal(src[20:20+n], &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Meshes) == 0 {
		return nil
	}
	bin := src[20+n+8:]
	word := func(accessor, i int) uint32 {
		return binary.LittleEndian.Uint32(bin[doc.BufferViews[doc.Accessors[accessor].BufferView].ByteOffset+4*i:])
	}
	var out []part
	for _, m := range doc.Meshes {
		p := m.Primitives[0]
		q := part{name: m.Name, mode: p.Mode}
		for i := range doc.Accessors[p.Attributes.POSITION].Count {
			var at [3]float64
			for k := range at {
				at[k] = float64(math.Float32frombits(word(p.Attributes.POSITION, 3*i+k))) + doc.Nodes[0].Translation[k]
			}
			q.places = append(q.places, at)
		}
		for i := range doc.Accessors[p.Indices].Count {
			q.indices = append(q.indices, word(p.Indices, i))
		}
		out = append(out, q)
	}
	return out
}

// volume is that of a closed surface whose faces look outward (the divergence theorem).
func (p part) volume() float64 {
	sum := 0.0
	for i := 0; i+2 < len(p.indices); i += 3 {
		a, b, c := p.places[p.indices[i]], p.places[p.indices[i+1]], p.places[p.indices[i+2]]
		sum += (a[0]*(b[1]*c[2]-b[2]*c[1]) + a[1]*(b[2]*c[0]-b[0]*c[2]) + a[2]*(b[0]*c[1]-b[1]*c[0])) / 6
	}
	return sum
}

// The body keeps its volume and its sense, y is up, and far coordinates cost nothing.
func TestReadBack(t *testing.T) {
	for _, at := range []mesh.Point3{{}, {X: 412345.125, Y: 5612345.5, Z: 812.25}} {
		parts := read(t, written(t, box(at.X, at.Y, at.Z)))
		if len(parts) != 2 || parts[0].mode != 4 || parts[1].mode != 1 || len(parts[1].indices) != 6 {
			t.Fatalf("%d parts", len(parts))
		}
		if v := parts[0].volume(); math.Abs(v-12) > 1e-3*math.Max(1, at.Y/1e3) {
			t.Errorf("volume %g, want 12", v)
		}
		if p, want := parts[0].places[7], [3]float64{at.X + 4, at.Z - 1.5, -at.Y - 2}; p != want {
			t.Errorf("a corner at %v, want %v", p, want)
		}
	}
}

func TestSameBytes(t *testing.T) {
	if !bytes.Equal(written(t, box(1, 2, 3)), written(t, box(1, 2, 3))) {
		t.Error("two runs differ")
	}
}

func TestRefused(t *testing.T) {
	for what, change := range map[string]func(b *glb.Body){
		"no number":   func(b *glb.Body) { b.Points[3].Z = math.NaN() },
		"too far":     func(b *glb.Body) { b.Points[3].X = 1e9 },
		"no point":    func(b *glb.Body) { b.Triangles[2][1] = 8 },
		"before":      func(b *glb.Body) { b.Triangles[2][1] = -1 },
		"both":        func(b *glb.Body) { b.Lines = [][]int32{{0, 1}} },
		"colour":      func(b *glb.Body) { b.Paint[2] = 1.5 },
		"short line":  func(b *glb.Body) { b.Triangles, b.Lines = nil, [][]int32{{0}} },
		"wrong lines": func(b *glb.Body) { b.Triangles, b.Lines = nil, [][]int32{{0, 9}} },
	} {
		s := box(0, 0, 0)
		change(&s.Bodies[0])
		var out bytes.Buffer
		if err := glb.Write(&out, s); err == nil || !strings.Contains(err.Error(), "box") || out.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes", what, err, out.Len())
		}
	}
	if glb.Write(full{}, box(0, 0, 0)) == nil {
		t.Error("a full disk went unseen")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }
