package survey

import (
	"math"

	"brimline/adjust"
	"brimline/basin"
	"brimline/finding"
	"brimline/plane"
)

// Water is what the pool holds at the latest surface read: m³, m², metres. A null standard deviation
// means that nothing says it.
type Water struct {
	Surface      string     `json:"surface"`
	Level        float64    `json:"level"` // height of the surface
	LevelSD      *float64   `json:"level_sd"`
	Area         float64    `json:"area"` // of the surface
	AreaSD       *float64   `json:"area_sd"`
	Volume       float64    `json:"volume"`
	VolumeSD     *float64   `json:"volume_sd"`
	WettedArea   float64    `json:"wetted_area"`
	WettedSD     *float64   `json:"wetted_sd"`
	MeanDepth    float64    `json:"mean_depth"`
	MeanDepthSD  *float64   `json:"mean_depth_sd"`
	Deepest      float64    `json:"deepest"` // at a reading
	DeepestSD    *float64   `json:"deepest_sd"`
	At           Spot       `json:"at"`
	Shallowest   float64    `json:"shallowest"` // of the floor, at a reading
	ShallowestSD *float64   `json:"shallowest_sd"`
	ShallowestAt Spot       `json:"shallowest_at"`
	Split        Split      `json:"split"`
	Causes       Causes     `json:"causes"`
	Shortcut     Shortcut   `json:"shortcut"`
	Stages       []Stage    `json:"stages"`
	Steepest     *Steepest  `json:"steepest"` // null where no three depths lie broad enough to tell a slope
	RuleSet      string     `json:"rule_set"` // that depths and slopes are compared with; "" none
	Edition      string     `json:"edition"`
	Rules        []RuleLine `json:"rules"`
	Caution      string     `json:"caution"` // what the figures do not say
}

// Spot is a place, and the mark that stands there.
type Spot struct {
	Mark string  `json:"mark"` // "" none
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
}

// Split is the wetted area by what it lies on; tops and fronts of steps and ledges are theirs.
type Split struct {
	Floor  float64 `json:"floor"`
	Walls  float64 `json:"walls"`
	Coves  float64 `json:"coves"`
	Steps  float64 `json:"steps"`
	Ledges float64 `json:"ledges"`
}

// Causes are the shares of the variance of the volume, which add up to 1: the height of the water, the
// place of the rim, the depths read, what was read of rim, walls and tops, and what the spacing of the
// readings leaves open. One is below 0 where its error makes up for another's.
type Causes struct {
	Water    float64 `json:"water"`
	Outline  float64 `json:"outline"`
	Floor    float64 `json:"floor"`
	Walls    float64 `json:"walls"`
	Sampling float64 `json:"sampling"`
}

// Shortcut is the usual estimate, the mean of the least and the greatest depth times the area of the
// surface; Error is what it is more than the volume.
type Shortcut struct {
	Volume float64 `json:"volume"`
	Error  float64 `json:"error"`
}

// Stage is a row of the stage table.
type Stage struct {
	Level    float64  `json:"level"`
	Depth    float64  `json:"depth"` // below the surface read
	Area     float64  `json:"area"`
	Volume   float64  `json:"volume"`
	VolumeSD *float64 `json:"volume_sd"`
	Wetted   float64  `json:"wetted"`
}

// Steepest is the steepest slope of the floor between depths read: rise over level length.
type Steepest struct {
	Slope   float64  `json:"slope"`
	SlopeSD *float64 `json:"slope_sd"`
	OneIn   *float64 `json:"one_in"` // n of 1:n; null for a level floor
	At      Spot     `json:"at"`
	Depth   float64  `json:"depth"` // there
}

// stageStep is the step of the stage table, metres: common practice, no source.
const stageStep = 0.10

// noDiving goes with every sheet of depths.
const noDiving = "No statement about diving."

// water fills the water at the latest surface read. Without one it stays empty, which is a finding.
func (g *gather) water(r *Result, y *body) {
	name := g.latestSurface()
	level, ok := y.up.other("water", name)
	for _, s := range r.Basin.Surfaces() {
		if s.Name == name {
			level = s.Height
		}
	}
	if name == "" || !ok {
		g.found = append(g.found, finding.Finding{Code: "water-unread"})
		return
	}
	g.overLip(r.Basin, level, name, r)
	w := r.Basin.Water(level)
	out := &Water{Surface: name, Level: level.Z, Area: w.Area, AreaSD: some(w.AreaTrust.SD), Volume: w.Volume, VolumeSD: some(w.VolumeTrust.SD),
		WettedArea: w.Wetted, WettedSD: some(w.WettedTrust.SD), MeanDepth: w.Mean, MeanDepthSD: some(w.MeanSD),
		Deepest: w.Deepest.Depth, DeepestSD: some(w.Deepest.SD), At: spotAt(w.Deepest.Name, w.Deepest.At),
		Shallowest: w.Shallowest.Depth, ShallowestSD: some(w.Shallowest.SD), ShallowestAt: spotAt(w.Shallowest.Name, w.Shallowest.At),
		Split:    Split{w.Parts[basin.Floor], w.Parts[basin.Walls], w.Parts[basin.Coves], w.Parts[basin.Steps], w.Parts[basin.Ledges]},
		Causes:   causes(w.VolumeTrust),
		Shortcut: Shortcut{w.Shortcut.Volume, w.Shortcut.Error}, Stages: stages(r.Basin, level), Rules: []RuleLine{}, Caution: noDiving}
	if b, ok := adjust.UpBlock(g.net, "water", name); ok {
		_, out.LevelSD = g.height(b)
	}
	if s, ok := r.Basin.Steepest(level.Z, math.Inf(-1), math.Inf(1)); ok {
		out.Steepest = &Steepest{Slope: s.Rise, SlopeSD: some(s.SD), At: spotAt("", s.At), Depth: s.Depth}
		if s.Rise > s.SD {
			out.Steepest.OneIn = some(1 / s.Rise)
		}
	}
	y.compare(r.Basin, level, out)
	r.Water = out
}

// latestSurface is the surface of the last freeboard in force whose height is held; "" for none.
func (g *gather) latestSurface() string {
	for i := len(g.book.Readings) - 1; i >= 0; i-- {
		t := &g.book.Readings[i]
		if t.Kind != "water" || !counts(t) {
			continue
		}
		if b, ok := adjust.UpBlock(g.net, "water", t.Water); ok {
			if _, held := g.sol.Height(b); held {
				return t.Water
			}
		}
	}
	return ""
}

// overLip says of a surface that it stands above the lowest place where water would leave, by more than
// the readings leave open.
func (g *gather) overLip(b *basin.Basin, level basin.Height, name string, r *Result) {
	brim := b.Brim()
	sd := 0.0
	for _, s := range r.Levels.Surfaces {
		if s.Name == name && s.SZ != nil {
			sd = *s.SZ
		}
	}
	if over := level.Z - brim.Height; over > normal95*math.Hypot(sd, brim.SD) && over > 0 {
		words := ""
		if brim.Name != "" {
			words = ", the lip " + brim.Name
		}
		g.found = append(g.found, finding.Finding{Code: "water-over", Words: map[string]string{"water": name, "name": words}, Figures: map[string]float64{"over": over}})
	}
}

// normal95 is the two-sided 95 % point of the normal distribution.
const normal95 = 1.96

func spotAt(mark string, p plane.Point) Spot { return Spot{mark, p.X, p.Y} }

// causes turns variances into shares.
func causes(t basin.Trust) Causes {
	v := t.SD * t.SD
	if !(v > 0) {
		return Causes{}
	}
	share := func(c basin.Cause) float64 { return t.Cause[c] / v }
	return Causes{Water: share(basin.WaterReference), Outline: share(basin.OutlineCause), Floor: share(basin.FloorReadings), Walls: share(basin.WallReadings), Sampling: share(basin.Spacing)}
}

// stages is the table from the floor up to the surface; empty where the water is too deep to table.
func stages(b *basin.Basin, level basin.Height) []Stage {
	out := []Stage{}
	rows, err := b.Stages(level, stageStep)
	if err != nil {
		return out
	}
	for _, s := range rows {
		out = append(out, Stage{Level: s.Level, Depth: level.Z - s.Level, Area: s.Area, Volume: s.Volume, VolumeSD: some(s.VolumeSD), Wetted: s.Wetted})
	}
	return out
}
