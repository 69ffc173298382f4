package dxf

import (
	"errors"

	"brimline/sheet"
)

var errCourse = errors.New("a line in space needs two places or more, each with its height")

// spatial is the flag of a polyline in space, and spot that of its vertices (DXF reference, POLYLINE
// and VERTEX, code 70).
const (
	spatial = 8
	spot    = 32
)

// course is a polyline in space: a head, a vertex each, an end. In R2000 vertices and end are owned by the
// head.
func (e entity) course(c sheet.Course) {
	if len(c.At) < 2 || len(c.Z) != len(c.At) {
		e.fail(errCourse)
		return
	}
	e.covers(c.At...)
	e.begin("POLYLINE", "AcDb3dPolyline")
	head := e.last
	e.whole(66, 1)
	e.high(10, e.at(sheet.Spot{}.At), 0)
	e.whole(70, spatial+flag(c.Closed))
	for i, q := range c.At {
		e.owned("VERTEX", head)
		e.class("AcDbVertex")
		e.class("AcDb3dPolylineVertex")
		e.high(10, e.at(q), e.size(c.Z[i]))
		e.whole(70, spot)
	}
	e.owned("SEQEND", head)
}

// owned begins a part of an entity.
func (e entity) owned(kind string, owner handle) {
	e.object(kind, e.next(), owner)
	e.class("AcDbEntity")
	e.str(8, e.layer)
}
