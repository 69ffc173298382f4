package mistake

import (
	"math"
	"strconv"
	"strings"

	"brimline/unit"
)

// FeetTenths is a decimal of a foot taken for inches or the other way: 5.8 ft written as 5' 8".
type FeetTenths struct{}

// FeetMetres is a figure of one unit written as the other.
type FeetMetres struct{}

// Code of the closed list.
func (FeetTenths) Code() string { return "feet-tenths" }

// Code of the closed list.
func (FeetMetres) Code() string { return "feet-metres" }

const (
	foot = 0.3048
	inch = 0.0254
)

// True reads whole inches as tenths (or hundredths from ten on), and a decimal foot of one or two
// figures as inches. It answers nothing where the text is metric.
func (FeetTenths) True(text string, v float64, u unit.Unit) []Was {
	feet := math.Floor(v/foot + 1e-9)
	rest := v - feet*foot
	if strings.ContainsAny(text, "'’′") || strings.Contains(text, "-") {
		n := math.Round(rest / inch)
		if math.Abs(rest-n*inch) > 1e-6 || n < 1 || n > 11 {
			return nil
		}
		share := n / 10
		if n >= 10 {
			share = n / 100
		}
		return []Was{{(feet + share) * foot, "tenths of a foot written as inches"}}
	}
	if u != unit.FT && !strings.Contains(text, "ft") {
		return nil
	}
	_, decimals, ok := strings.Cut(strings.TrimSpace(strings.TrimSuffix(text, "ft")), ".")
	n, err := strconv.Atoi(strings.TrimSpace(decimals))
	if !ok || err != nil || n < 1 || n > 11 || len(strings.TrimSpace(decimals)) > 2 {
		return nil
	}
	return []Was{{feet*foot + float64(n)*inch, "inches written as tenths of a foot"}}
}

// True reads the figure in the other unit.
func (FeetMetres) True(text string, v float64, u unit.Unit) []Was {
	if u == unit.FT || u == unit.IN || strings.ContainsAny(text, "'\"") {
		return []Was{{v / foot, "metres written as feet"}}
	}
	return []Was{{v * foot, "feet written as metres"}}
}
