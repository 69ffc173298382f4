package network

// Local is a kind whose readings are sizes at one station: they hold no mark and have no unknowns, so
// Build makes no observation of them. The basin is drawn from them as they stand.
type Local interface{ local() }

// Wall is a rod down the wall from one edge to another.
type Wall struct{ station }

// Plumb is how far the wall stands off a plumb line at some depth.
type Plumb struct{ station }

// Profile is the step from edge to edge at a station.
type Profile struct{ station }

// Name of the kind.
func (Wall) Name() string { return "wall" }

// Name of the kind.
func (Plumb) Name() string { return "plumb" }

// Name of the kind.
func (Profile) Name() string { return "profile" }

// station is what they share: nothing is touched or predicted, each value stands for itself.
type station struct{}

func (station) local() {}

// Parts of its value: none takes part.
func (station) Parts(*Obs) []string { return nil }

// Touches nothing.
func (station) Touches(*Obs) []Unknown { return nil }

// Predict gives nothing.
func (station) Predict(State, *Obs, []float64, []float64) {}

// Sigma gives nothing.
func (station) Sigma(*Obs, []float64) {}
