package draft

import (
	"strconv"

	"brimline/sheet"
)

// depthTable lists the depths read, with the steps and ledges.
func (j *job) depthTable(d *Depths) listing {
	lu := j.fig.lengthUnit()
	l := listing{
		title: "Depths below " + d.Water,
		columns: []sheet.Column{
			column(sheet.Start, "", "place"), column(sheet.End, lu, "x"), column(sheet.End, lu, "y"), column(sheet.End, lu, "depth"),
			column(sheet.End, j.fig.smallUnit(), "±"),
		},
		after: []string{"± stands for 95 %. No statement about diving."},
	}
	for _, s := range d.Soundings {
		l.rows = append(l.rows, cells(or(s.Name), j.fig.length(s.At.X), j.fig.length(s.At.Y), j.fig.length(s.Depth), j.fig.small(cover*s.SD)))
	}
	for _, t := range d.Tops {
		name := t.Name
		if name == "" {
			name = t.Kind
		}
		l.rows = append(l.rows, cells(name, none, none, j.fig.length(t.Depth), none))
	}
	return l
}

// stageTable lists what the pool holds at each depth of water.
func (j *job) stageTable(d *Depths) listing {
	area, volume := "m²", "m³"
	if j.fig.feet() {
		area, volume = "ft²", "ft³"
	}
	l := listing{
		title: "Stage table",
		columns: []sheet.Column{
			column(sheet.End, j.fig.lengthUnit(), "below", d.Water), column(sheet.End, area, "water", "surface"), column(sheet.End, volume, "volume"),
			column(sheet.End, volume, "±"), column(sheet.End, area, "wetted"),
		},
		after: []string{"What the pool holds when the water stands so far below " + d.Water + ". ± stands for 95 %. It does not advise to lower the water."},
	}
	for _, s := range d.Stages {
		l.rows = append(l.rows, cells(j.fig.length(d.Level-s.Level), j.fig.bareArea(s.Area), j.fig.bareVolume(s.Volume), j.fig.bareVolume(cover*s.VolumeSD), j.fig.bareArea(s.Wetted)))
	}
	return l
}

func (f figures) bareArea(m2 float64) string {
	if f.feet() {
		return minus(strconv.FormatFloat(m2/(foot*foot), 'f', 1, 64))
	}
	return minus(strconv.FormatFloat(m2, 'f', 2, 64))
}

func (f figures) bareVolume(m3 float64) string {
	if f.feet() {
		return minus(strconv.FormatFloat(m3/cubicFoot, 'f', 1, 64))
	}
	return minus(strconv.FormatFloat(m3, 'f', 2, 64))
}
