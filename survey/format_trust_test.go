package survey_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// typed wants each key of a JSON object to be there with a type: string, number, bool, list,
// object, or null.
func typed(t *testing.T, what string, got any, keys string) {
	t.Helper()
	object, ok := got.(map[string]any)
	if !ok {
		t.Errorf("%s is %v, no object", what, got)
		return
	}
	for _, k := range strings.Fields(keys) {
		name, want, _ := strings.Cut(k, ":")
		v, there := object[name]
		is := "null"
		switch v.(type) {
		case string:
			is = "string"
		case float64:
			is = "number"
		case bool:
			is = "bool"
		case []any:
			is = "list"
		case map[string]any:
			is = "object"
		}
		if !there || !slices.Contains(strings.Split(want, "|"), is) {
			t.Errorf("%s: %s is %v (there: %v), want a %s", what, name, v, there, want)
		}
	}
}

// What the format says of mistakes, of what is likely, of tests and of the next reading: the keys
// are there and of their types.
func TestTypesOfTrust(t *testing.T) {
	all := crossed(taped("A", "B", "C"))
	i := at(t, all, "B", "r5")
	all[i].is += 1
	all[len(all)-1].extra = ", check: true"
	var top map[string]any
	if err := json.Unmarshal([]byte(bytesOf(t, run(t, written(all, courtRim)))), &top); err != nil {
		t.Fatal(err)
	}
	first := func(v any) any {
		l, ok := v.([]any)
		if !ok || len(l) == 0 {
			t.Fatalf("an empty list: %v", v)
		}
		return l[0]
	}
	suspect := top["readings"].([]any)[i].(map[string]any)
	shape := top["shape"].(map[string]any)
	typed(t, "suspect reading", suspect, "n:string id:string state:string group:null likely:list w:number detectable:number parts:list")
	typed(t, "likely", first(suspect["likely"]), "code:string cause:string value:number probability:number")
	typed(t, "check", top["readings"].([]any)[len(all)-1], "check:bool state:string adjusted:number")
	typed(t, "mistake", first(top["mistakes"]), "code:string text:string readings:list edit:list probability:number")
	typed(t, "edit", first(first(top["mistakes"]).(map[string]any)["edit"]), "n:string value:number")
	typed(t, "next", first(top["next"]), "kind:string marks:list text:string about:number order:string gain:number unit:string minutes:number alone:bool why:string")
	typed(t, "shape", shape, "state:string tolerance:number share:number unseen:number worst:number at:string why:list tests:list weakest:list")
	typed(t, "test", first(shape["tests"]), "name:string at:string value:number u95:number tolerance:number share:number state:string")
	typed(t, "weakest", first(shape["weakest"]), "reading:string mark:string error:number|null move:number|null text:string")
	typed(t, "result", top, "levels:null water:null")
	typed(t, "line", top["lines"].(map[string]any)["rim"], "family:object")

	_, doubtful := threeAlone(t)
	var d map[string]any
	if err := json.Unmarshal([]byte(bytesOf(t, doubtful)), &d); err != nil {
		t.Fatal(err)
	}
	for k, x := range doubtful.Readings {
		if x.State == "doubtful" {
			typed(t, fmt.Sprint("doubtful reading ", x.N), d["readings"].([]any)[k], "group:number likely:list")
		}
	}
	typed(t, "alternative", first(d["marks"].(map[string]any)["r5"].(map[string]any)["alternatives"]), "x:number y:number")
}

// Edits say no more than a person can write down: they are finite, and none leaves a reading as it
// is written.
func TestEditsChangeSomething(t *testing.T) {
	metre := crossed(taped("A", "B", "C"))
	metre[at(t, metre, "B", "r5")].is += 1
	for _, all := range [][]tape{metre, swap(t).all, hook(t).all, kick(t).all} {
		r := run(t, written(all, courtRim))
		for _, m := range r.Mistakes {
			if m.Probability <= 0 || m.Probability > 1 {
				t.Errorf("%s: probability %g", m.Code, m.Probability)
			}
			for _, e := range m.Edit {
				x := reading(t, r, e.N)
				if !slices.Contains(m.Readings, e.N) || e.Value == nil || *e.Value <= 0 || *e.Value == x.Value {
					t.Errorf("%s: edit %+v of a reading of %g", m.Code, e, x.Value)
				}
			}
		}
	}
}
