package fieldbook

// steelStandard is the temperature at which a tape is right where its tool says none, °C: the
// reference temperature of ISO 1.
const steelStandard = 20

// warm are the kinds that read a length along a tape, which grows when it is warm.
func warm(kind string) bool { return among(kind, []string{"tie", "bow", "along", "round", "clear"}) }

// warmth puts the tape's temperature into a reading.
func (s *Shared) warmth(b *builder, r Reading) Reading {
	if !s.Temperature.given() {
		return r
	}
	r.Warmed, r.Celsius = true, b.degrees(s.Temperature)
	switch {
	case !warm(r.Kind):
		b.fault(s.Temperature.at, "not-here", "a "+r.Kind+" is not read along a tape", "a tie, bow, along, round or clear, or no at_temperature")
	case !s.Tool.given():
		b.fault(s.Temperature.at, "missing-key", "a temperature, and nothing says of which tape", "tool")
	}
	return r
}

// degrees is a temperature in °C that a person can stand in.
func (b *builder) degrees(f Figure) float64 {
	t := b.figure(f.leaf, anySign)
	if t < -50 || t > 90 {
		b.fault(f.at, "too-large", f.text+" degrees Celsius on a tape", "degrees Celsius, such as 31")
	}
	return t
}

// Stretch is by how much a warm tape is too long, as a share of the length: α·(T − T₀), α the
// expansion of its tool and T₀ the temperature at which that is right. A length L read along it is in
// truth L·(1 + Stretch). 0 where the reading notes no temperature, or the tool no expansion.
//
// The formula is the one of any text on taping, such as P. R. Wolf and C. D. Ghilani, Elementary
// Surveying, chapter 6.
func (b *Book) Stretch(r Reading) float64 {
	t, ok := b.Tool(r.Tool)
	if !ok || !r.Warmed {
		return 0
	}
	return t.Expansion * (r.Celsius - t.Standard)
}
