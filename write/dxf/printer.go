package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"brimline/plane"
	"brimline/sheet"
)

var errNumber = errors.New("a coordinate is no number")

// printer writes pairs of a group code and a value, a line each.
type printer struct {
	file   File
	out    bytes.Buffer
	items  []sheet.Item
	names  map[sheet.Layer]string
	last   handle // the last one given out
	fixed  fixed
	err    error
	extent plane.Box // of what is drawn, in the file's unit
}

// handle names an object in the file.
type handle int

func (h handle) String() string { return strings.ToUpper(strconv.FormatInt(int64(h), 16)) }

func (p *printer) next() handle {
	p.last++
	return p.last
}

func (p *printer) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

func (p *printer) str(code int, value string) {
	fmt.Fprintf(&p.out, "%3d\r\n%s\r\n", code, value)
}

func (p *printer) whole(code, value int) { p.str(code, strconv.Itoa(value)) }

func (p *printer) ref(code int, h handle) { p.str(code, h.String()) }

// num writes a number with as many figures as bring it back exactly, never with an exponent.
func (p *printer) num(code int, x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		p.fail(errNumber)
		x = 0
	}
	t := strconv.FormatFloat(x+0, 'f', -1, 64) // x+0 makes −0 plain
	if !strings.Contains(t, ".") {
		t += ".0"
	}
	p.str(code, t)
}

// point writes x, y and z = 0 at code, code+10, code+20.
func (p *printer) point(code int, q plane.Point) { p.high(code, q, 0) }

// high is a point with its height.
func (p *printer) high(code int, q plane.Point, z float64) {
	p.flat(code, q)
	p.num(code+20, z)
}

// flat writes x and y.
func (p *printer) flat(code int, q plane.Point) {
	p.num(code, q.X)
	p.num(code+10, q.Y)
}

// size takes metres to the file's unit.
func (p *printer) size(m float64) float64 { return m * p.file.Unit.PerMetre() }

// at takes a place to the file's unit.
func (p *printer) at(q plane.Point) plane.Point {
	return plane.Point{X: p.size(q.X), Y: p.size(q.Y)}
}

// modern says that the release has handles of owners and markers of subclasses.
func (p *printer) modern() bool { return p.file.Version == R2000 }

// class writes the marker of a subclass.
func (p *printer) class(name string) {
	if p.modern() {
		p.str(100, name)
	}
}

// object begins an object with its handle and owner.
func (p *printer) object(kind string, h, owner handle) {
	p.str(0, kind)
	p.ref(5, h)
	if p.modern() {
		p.ref(330, owner)
	}
}
