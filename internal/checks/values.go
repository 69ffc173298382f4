package checks

import "testing"

// Values are the inputs or the answers of an item. A key that is missing or of another kind
// fails the test.
type Values struct {
	what string
	raw  map[string]any
	t    testing.TB
}

func (v Values) get(key string) any {
	v.t.Helper()
	x, ok := v.raw[key]
	if !ok {
		v.t.Fatalf("%s: there is no %q", v.what, key)
	}
	return x
}

// Number is a single number.
func (v Values) Number(key string) float64 {
	v.t.Helper()
	x, ok := v.get(key).(float64)
	if !ok {
		v.t.Fatalf("%s: %q is no number", v.what, key)
	}
	return x
}

// Text is a single text.
func (v Values) Text(key string) string {
	v.t.Helper()
	x, ok := v.get(key).(string)
	if !ok {
		v.t.Fatalf("%s: %q is no text", v.what, key)
	}
	return x
}

// List is a list of numbers.
func (v Values) List(key string) []float64 {
	v.t.Helper()
	return v.numbers(key, v.Any(key))
}

// Rows is a list of lists of numbers, such as points.
func (v Values) Rows(key string) [][]float64 {
	v.t.Helper()
	var out [][]float64
	for _, row := range v.Any(key) {
		list, ok := row.([]any)
		if !ok {
			v.t.Fatalf("%s: %q is no list of lists", v.what, key)
		}
		out = append(out, v.numbers(key, list))
	}
	return out
}

// Any is a list of mixed things, such as [from, to, difference], as encoding/json gives it.
func (v Values) Any(key string) []any {
	v.t.Helper()
	x, ok := v.get(key).([]any)
	if !ok {
		v.t.Fatalf("%s: %q is no list", v.what, key)
	}
	return x
}

// Object is a table of numbers by name.
func (v Values) Object(key string) map[string]float64 {
	v.t.Helper()
	x, ok := v.get(key).(map[string]any)
	if !ok {
		v.t.Fatalf("%s: %q is no table", v.what, key)
	}
	out := map[string]float64{}
	for k, y := range x {
		out[k] = v.numbers(key, []any{y})[0]
	}
	return out
}

// Flat are all numbers under a key, lists unrolled.
func (v Values) Flat(key string) []float64 {
	v.t.Helper()
	var out []float64
	var walk func(any)
	walk = func(x any) {
		v.t.Helper()
		if list, ok := x.([]any); ok {
			for _, y := range list {
				walk(y)
			}
			return
		}
		out = append(out, v.numbers(key, []any{x})...)
	}
	walk(v.get(key))
	return out
}

func (v Values) numbers(key string, list []any) []float64 {
	v.t.Helper()
	out := make([]float64, len(list))
	for i, x := range list {
		n, ok := x.(float64)
		if !ok {
			v.t.Fatalf("%s: %q holds something that is no number", v.what, key)
		}
		out[i] = n
	}
	return out
}
