package survey

import "math"

// Rise is the difference of height from one place to the other, with what follows from it.
type Rise struct {
	Rise      float64  `json:"rise"` // upwards from the first to the second
	RiseSD    float64  `json:"rise_sd"`
	Slope     *float64 `json:"slope"` // rise over level length, 0.02 for 2 %; null where the level length is nothing
	SlopeSD   *float64 `json:"slope_sd"`
	OneIn     *float64 `json:"one_in"` // n of 1:n, positive; null where the slope is less than its standard deviation
	OneInSD   *float64 `json:"one_in_sd"`
	Sloping   float64  `json:"sloping"` // length from place to place
	SlopingSD float64  `json:"sloping_sd"`
}

// rise fills the rise where both ends are marks of known height.
func (r *Ruler) rise(a, b end, m *Measured) {
	if a.spot != nil || b.spot != nil {
		return
	}
	m.Rise = rise(m.Length, m.LengthSD, r.Marks[a.label], r.Marks[b.label])
}

// rise of q above p at a level length. The standard deviations of heights and of the length are taken as
// independent of each other; two heights from one levelling share part of theirs, and their rise is
// then better known than is said here.
func rise(level, sd float64, p, q *Mark) *Rise {
	if p == nil || q == nil || p.Z == nil || q.Z == nil || p.SZ == nil || q.SZ == nil {
		return nil
	}
	h, hsd := *q.Z-*p.Z, math.Hypot(*p.SZ, *q.SZ)
	out := &Rise{Rise: h, RiseSD: hsd, Sloping: math.Hypot(level, h)}
	if out.Sloping == 0 {
		out.SlopingSD = math.Hypot(sd, hsd)
		return out
	}
	out.SlopingSD = math.Hypot(level*sd, h*hsd) / out.Sloping
	if level < touching {
		return out
	}
	s := h / level
	ssd := math.Hypot(hsd, s*sd) / level
	out.Slope, out.SlopeSD = &s, &ssd
	if math.Abs(s) > ssd {
		n := 1 / math.Abs(s)
		out.OneIn, out.OneInSD = &n, some(n*n*ssd)
	}
	return out
}
