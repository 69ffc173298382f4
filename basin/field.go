package basin

import (
	"math"

	"brimline/plane"
)

// field is what a surface does between the places where it was read, beside what is drawn through
// them: a stationary Gaussian process in plan with the covariance σ²·k(distance), of which neither
// size nor reach is known. Both get a posterior on a grid from second differences: combinations of
// readings that are zero on every plane (weights α with Σα = 0 and Σα·place = 0), so that only the
// residual surface and the noise of the readings show in them, with the variance αᵀ(σ²K + C)α. The
// differences overlap; each counts for its share of the readings that are left over (composite
// likelihood: C. Varin, N. Reid, D. Firth, An overview of composite likelihood methods, Statistica
// Sinica 21, 2011). The prior of both is log-normal about what is usual.
type field struct {
	sizes [sizes]float64   // σ², m²
	reach [reaches]float64 // m
	mean  [reaches]float64 // Σ σ²·posterior of each reach, m²
	table []float64        // the mean covariance at every tick of distance, m²
}

const sizes, reaches = 11, 6

// spread of the priors, as natural logarithms: a factor of 2.2 for the size, of 1.7 for the reach.
// Common practice, no source.
const spreadSize, spreadReach = 0.8, 0.53

// alike is the correlation at a distance of d reaches: Matérn's with ν = 5/2 (C. E. Rasmussen, C. K.
// I. Williams, Gaussian Processes for Machine Learning, 2006, equation 4.17), of a surface that has a
// slope and a curvature everywhere.
func alike(d float64) float64 {
	a := math.Sqrt(5) * d
	return (1 + a + a*a/3) * math.Exp(-a)
}

// contrast is one second difference: its value, the places and weights, and the variance that the
// readings' own errors give it.
type contrast struct {
	value float64
	at    []plane.Point
	alpha []float64
	noise float64
}

// spared is αᵀKα at a reach.
func (c *contrast) spared(reach float64) float64 {
	sum := 0.0
	for i, p := range c.at {
		sum += c.alpha[i] * c.alpha[i]
		for j := range i {
			sum += 2 * c.alpha[i] * c.alpha[j] * alike(p.Dist(c.at[j])/reach)
		}
	}
	return sum
}

// hush is the least variance of a difference: a hundredth of a millimetre, finer than anything is read.
const hush = 1e-10 // m²

// learnField is the posterior after the contrasts, each with the given share of a reading.
func learnField(contrasts []contrast, share, size, reach float64) *field {
	f := &field{}
	var score [reaches][sizes]float64
	best := math.Inf(-1)
	for r := range reaches {
		at := (float64(r) - (reaches-1)/2.0) / 2 // half factors of e
		f.reach[r] = reach * math.Exp(at)
		spare := make([]float64, len(contrasts))
		for k := range contrasts {
			spare[k] = contrasts[k].spared(f.reach[r])
		}
		for s := range sizes {
			step := 0.45 * (float64(s) - (sizes-1)/2.0)
			f.sizes[s] = size * size * math.Exp(2*step)
			l := -step*step/(2*spreadSize*spreadSize) - at*at/(2*spreadReach*spreadReach)
			for k, c := range contrasts {
				v := math.Max(f.sizes[s]*spare[k]+c.noise, hush)
				l -= share * (math.Log(v) + c.value*c.value/v) / 2
			}
			score[r][s] = l
			best = math.Max(best, l)
		}
	}
	sum := 0.0
	for r := range reaches {
		for s := range sizes {
			w := math.Exp(score[r][s] - best)
			sum += w
			f.mean[r] += w * f.sizes[s]
		}
	}
	for r := range reaches {
		f.mean[r] /= sum
	}
	f.tabulate()
	return f
}

// tick is the step of the table of the mean covariance (metres): straight between, it is right to some
// millionths.
const tick, ticks = 0.004, 4000

// tabulate fills the table.
func (f *field) tabulate() {
	f.table = make([]float64, ticks+1)
	for k := range f.table {
		f.table[k] = f.reckon(tick * float64(k))
	}
}

// reckon is the mean covariance at a distance.
func (f *field) reckon(d float64) float64 {
	sum := 0.0
	for r := range reaches {
		sum += f.mean[r] * alike(d/f.reach[r])
	}
	return sum
}

// at is the same from the table.
func (f *field) at(d float64) float64 {
	x := d / tick
	k := int(x)
	if k >= ticks {
		return f.reckon(d)
	}
	return f.table[k] + (x-float64(k))*(f.table[k+1]-f.table[k])
}

// probe is a place where a figure feels the residual surface, with the weight, and the combination
// of readings that is drawn there.
type probe struct {
	at     plane.Point
	weight float64
	drawn  []term // number of a place in the list given, and its weight
}

// variance is that of Σ weight·(residual at the probe − what is drawn of it from the readings), the
// mean over the posterior.
func (f *field) variance(probes []probe, places []plane.Point) float64 {
	var at []plane.Point
	var w []float64
	pulled := make([]float64, len(places))
	for _, p := range probes {
		at, w = append(at, p.at), append(w, p.weight)
		for _, t := range p.drawn {
			pulled[t.in] -= p.weight * t.w
		}
	}
	for i, x := range pulled {
		if x != 0 {
			at, w = append(at, places[i]), append(w, x)
		}
	}
	return math.Max(0, f.quadratic(at, w))
}

// quadratic is wᵀKw with the mean covariance.
func (f *field) quadratic(at []plane.Point, w []float64) float64 {
	sum, here := 0.0, f.at(0)
	for i, p := range at {
		row := w[i] / 2 * here
		for j := range i {
			row += w[j] * f.at(math.Sqrt((p.X-at[j].X)*(p.X-at[j].X)+(p.Y-at[j].Y)*(p.Y-at[j].Y)))
		}
		sum += 2 * w[i] * row
	}
	return sum
}
