package draft

import (
	"brimline/plane"
	"brimline/sheet"
)

// sectionTitle is the title of their sheet.
const sectionTitle = "Sections"

// Room about a section in millimetres: at its sides for the heights of the rim, above for its title and
// below for its dimensions.
const (
	sectionSide = 24.0
	sectionHead = 22.0
	sectionFoot = 26.0
	sectionGap  = 4.0
	flattest    = 14.0 // a section is not drawn lower, but with its heights exaggerated
)

// placedSection is a section with its place: the paper of its start at the water surface.
type placedSection struct {
	Section
	at plane.Point
}

// sections draws the long and the cross sections, all at one scale.
func (p *pages) sections(d *Depths) {
	list := append([]Section{d.Long}, d.Across...)
	var have []Section
	for _, s := range list {
		if len(s.Pieces) > 0 {
			have = append(have, s)
		}
	}
	if len(have) == 0 && len(d.EdgeProfiles) == 0 {
		return
	}
	p.newPage()
	p.name(sectionTitle)
	scale, times := p.sectionScale(have, d)
	for len(have) > 0 {
		placed, deep := p.layOut(have, d, scale, times)
		if len(placed) == 0 {
			break
		}
		for _, s := range placed {
			c := p.newSectionCanvas(s, d, scale, times)
			c.compose(s.Name == d.Long.Name)
			page := &p.sheets[len(p.sheets)-1]
			page.Items = append(page.Items, c.items...)
			if times == 1 {
				page.Views = append(page.Views, sheet.View{Name: "section " + s.Name, Scale: scale, Model: plane.Point{Y: d.Level}, Paper: s.at})
			}
		}
		p.take(nil, deep)
		if have = have[len(placed):]; len(have) > 0 {
			p.newPage()
			p.name(sectionTitle)
		}
	}
	p.sectionNotes(d)
	p.edgeProfiles(d)
}

// sectionScale is the largest scale at which all go on two sheets; heights are exaggerated where the pool
// would be drawn too flat.
func (p *pages) sectionScale(list []Section, d *Depths) (sheet.Scale, float64) {
	scales := sheet.Scales(p.fig.feet())
	for _, s := range scales {
		times := heightTimes(list, s)
		if first, _ := p.layOut(list, d, s, times); len(first) > 0 {
			if rest, _ := p.layOut(list[len(first):], d, s, times); len(first)+len(rest) == len(list) {
				return s, times
			}
		}
	}
	return scales[len(scales)-1], 1
}

// heightTimes is how many times larger heights are drawn than lengths.
func heightTimes(list []Section, s sheet.Scale) float64 {
	tall := 0.0
	for _, x := range list {
		b := x.box()
		tall = max(tall, (b.Max.Y-b.Min.Y)*s.PerMetre())
	}
	for _, t := range []float64{1, 2, 5, 10} {
		if tall*t >= flattest {
			return t
		}
	}
	return 10
}

// layOut puts sections in rows from the top, as many as go on what is free of the sheet.
func (p *pages) layOut(list []Section, d *Depths, scale sheet.Scale, times float64) (placed []placedSection, deep float64) {
	k := scale.PerMetre()
	x, y, row := p.free.Min.X, p.free.Max.Y, 0.0
	for _, s := range list {
		b := s.box()
		w := max((b.Max.X-b.Min.X)*k+2*sectionSide, sheet.Width(howDrawn(whatCut(s.Name == d.Long.Name), scale, times), smallHeight, false)+4)
		up, down := max(0, b.Max.Y-d.Level)*k*times, max(0, d.Level-b.Min.Y)*k*times
		h := sectionHead + up + down + sectionFoot
		if x > p.free.Min.X && x+w > p.free.Max.X {
			x, y, row = p.free.Min.X, y-row-sectionGap, 0
		}
		if x+w > p.free.Max.X || y-h < p.free.Min.Y {
			break
		}
		placed = append(placed, placedSection{s, plane.Point{X: x + sectionSide - b.Min.X*k, Y: y - sectionHead - up}})
		x += w
		row = max(row, h)
		deep = p.free.Max.Y - y + row
	}
	return placed, deep
}

// sectionNotes say how the sections are to be read.
func (p *pages) sectionNotes(d *Depths) {
	rows := listed([]string{
		"Depths are below the water surface " + d.Water + ". Cross sections are seen from the shallow end towards the deep.",
		"No statement about diving: depths and slopes as recorded are no leave to dive.",
	}, smallHeight, wordColumn)
	p.besideOrUnder(rows, wordColumn)
}
