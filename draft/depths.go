package draft

import (
	"brimline/mesh"
	"brimline/plane"
)

// Depths are the floor and the water over it: depths in metres below the surface named, positive
// downward; heights upward.
type Depths struct {
	Water        string  // the surface that depths are counted from
	Level        float64 // its height
	Rim          plane.Path
	Soundings    []Sounding
	Deepest      Sounding
	Step         float64 // between contours
	Contours     []Contour
	Breaks       [][]mesh.Point3
	Tops         []Top
	Axis         [2]plane.Point // from the shallow to the deep end
	Long         Section
	Across       []Section
	EdgeProfiles []EdgeProfile
	Stages       []Stage
	Held         Held
	Steepest     *Slope
	Compared     []Compared
	Bodies       []Body // for views in space
}

// Sounding is a depth read.
type Sounding struct {
	Name      string
	At        plane.Point
	Depth, SD float64
}

// Contour is a line of one depth.
type Contour struct {
	Depth  float64
	Points []plane.Point
	Closed bool
}

// Top is the level area of a tread or a ledge.
type Top struct {
	Name, Kind string
	Ring       []plane.Point
	Depth      float64
}

// Section is an upright cut from one place to another: S metres along, from the first. Rim are the
// heights of the rim at the ends where the cut passes it.
type Section struct {
	Name     string // letters at its ends: A
	From, To plane.Point
	Pieces   []Cut
}

// Cut is a stretch of a section that is all of one part: floor, walls, coves, steps or ledges. X of a point
// is S and Y its height.
type Cut struct {
	Part   string
	Points []plane.Point
}

// EdgeProfile is the shape of the edge at a mark: points from an edge named to the next, outward and down
// from the first.
type EdgeProfile struct {
	Mark   string
	Points []EdgePoint
}

// EdgePoint is an edge: nose, track, tile and so on. What was not read of it is NaN; it is drawn as none.
type EdgePoint struct {
	Edge          string
	Outward, Down float64
}

// Stage is the pool filled to a height.
type Stage struct {
	Level, Area, Volume, VolumeSD, Wetted float64
}

// Held is what the pool holds at the level, with standard deviations. Causes are variances of the volume, which
// sum to VolumeSD squared; Parts are areas of Wetted.
type Held struct {
	Volume, VolumeSD     float64
	Causes               []Part
	Area, AreaSD         float64
	Wetted, WettedSD     float64
	Parts                []Part
	Mean, MeanSD         float64
	Shallowest, Deepest  float64
	Shortcut, ShortcutBy float64 // half of shallow and deep times the area; what it is too much
}

// Part is a figure by name.
type Part struct {
	Name  string
	Value float64
}

// Slope is the steepest of the floor: rise over level length.
type Slope struct {
	Rise, SD, Depth float64
	At              plane.Point
}

// Compared is a figure beside one of a rule set.
type Compared struct {
	Set, Clause, Figure, Source string
	Limit, Value, SD            float64
	Slope                       bool // else a depth
	Verdict                     string
}

// Body is a surface, or lines, in space: metres, z upward, colours from 0 to 1.
type Body struct {
	Name      string
	Paint     [4]float64
	Points    []mesh.Point3
	Triangles [][3]int32
	Lines     [][]int32
}
