package dxf_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"brimline/write/dxf"
)

// pair is a group code with its value.
type pair struct {
	code  int
	value string
}

// object is what stands between two codes 0, with the section and table that it stands in.
type object struct {
	kind, section, table string
	pairs                []pair
}

func (o object) get(code int) string {
	for _, p := range o.pairs {
		if p.code == code {
			return p.value
		}
	}
	return ""
}

func (o object) all(code int) []string {
	var out []string
	for _, p := range o.pairs {
		if p.code == code {
			out = append(out, p.value)
		}
	}
	return out
}

// objects reads a file pair by pair: every line ends as it should, every code is a number, every
// value of the kind that the range of its code asks for (DXF reference, group code value types).
func objects(t testing.TB, src string) []object {
	t.Helper()
	lines := strings.Split(src, "\r\n")
	if len(lines)%2 == 0 || lines[len(lines)-1] != "" {
		t.Fatalf("%d lines do not make pairs", len(lines))
	}
	var out []object
	section, table := "", ""
	for i := 0; i+1 < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			t.Fatalf("line %d: code %q", i+1, lines[i])
		}
		value := lines[i+1]
		typed(t, i+2, code, value)
		if code == 999 {
			continue
		}
		if code != 0 {
			out[len(out)-1].pairs = append(out[len(out)-1].pairs, pair{code, value})
			if n := len(out) - 1; code == 2 && out[n].kind == "SECTION" {
				section = value
			} else if code == 2 && out[n].kind == "TABLE" {
				table = value
			}
			continue
		}
		switch value {
		case "ENDSEC":
			section = ""
		case "ENDTAB":
			table = ""
		}
		out = append(out, object{kind: value, section: section, table: table})
	}
	return out
}

func typed(t testing.TB, line, code int, value string) {
	t.Helper()
	var err error
	switch {
	case code >= 10 && code < 60, code >= 140 && code < 150:
		var x float64
		if x, err = strconv.ParseFloat(value, 64); err == nil && (math.IsNaN(x) || strings.ContainsAny(value, "eE")) {
			t.Fatalf("line %d: number %q", line, value)
		}
	case code >= 60 && code < 100, code >= 280 && code < 290, code >= 370 && code < 380:
		_, err = strconv.Atoi(value)
	case code == 5, code == 105, code >= 320 && code < 370, code >= 390 && code < 400:
		_, err = strconv.ParseUint(value, 16, 64)
	default:
		for _, r := range value {
			if r < 0x20 || r > 0x7e {
				t.Fatalf("line %d: letter %q", line, r)
			}
		}
	}
	if err != nil {
		t.Fatalf("line %d, code %d: %v", line, code, err)
	}
}

// structure holds a file to the rules that an audit which repairs in silence lets pass.
func structure(t testing.TB, src string, v dxf.Version) []object {
	t.Helper()
	list := objects(t, src)
	sections(t, list, v)
	names := rows(t, list)
	handles(t, list, v)
	for _, o := range list {
		if o.section != "ENTITIES" || o.kind == "SECTION" {
			continue
		}
		if !slices.Contains(names["LAYER"], o.get(8)) {
			t.Fatalf("%s on layer %q, which is not in the table", o.kind, o.get(8))
		}
	}
	for _, o := range list {
		if o.table == "LAYER" && o.kind == "LAYER" && !slices.Contains(names["LTYPE"], o.get(6)) {
			t.Fatalf("layer %q has line type %q, which is not in the table", o.get(2), o.get(6))
		}
	}
	polylines(t, list)
	return list
}

func sections(t testing.TB, list []object, v dxf.Version) {
	t.Helper()
	want := []string{"HEADER", "TABLES", "BLOCKS", "ENTITIES"}
	if v == dxf.R2000 {
		want = []string{"HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"}
	}
	var got []string
	open := 0
	for _, o := range list {
		switch o.kind {
		case "SECTION":
			got = append(got, o.get(2))
			open++
		case "ENDSEC":
			open--
		}
		if open < 0 || open > 1 {
			t.Fatal("sections stand inside each other")
		}
	}
	if !slices.Equal(got, want) || list[len(list)-1].kind != "EOF" {
		t.Fatalf("sections %v, end %s", got, list[len(list)-1].kind)
	}
}

// rows are the names in each table; none twice, and as many as the table says.
func rows(t testing.TB, list []object) map[string][]string {
	t.Helper()
	names := map[string][]string{}
	counts := map[string]string{}
	for _, o := range list {
		switch {
		case o.kind == "TABLE":
			counts[o.get(2)] = o.get(70)
		case o.table != "" && o.kind == o.table:
			for _, n := range names[o.table] {
				if strings.EqualFold(n, o.get(2)) {
					t.Fatalf("table %s has %q twice", o.table, n)
				}
			}
			names[o.table] = append(names[o.table], o.get(2))
		}
	}
	for table, n := range counts {
		if strconv.Itoa(len(names[table])) != n {
			t.Fatalf("table %s says %s rows and has %v", table, n, names[table])
		}
	}
	for _, must := range []string{"VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID"} {
		if _, ok := counts[must]; !ok {
			t.Fatalf("no table %s", must)
		}
	}
	return names
}

// handles are unique and below the seed, and whatever is pointed at exists.
func handles(t testing.TB, list []object, v dxf.Version) {
	t.Helper()
	seen := map[uint64]bool{0: true}
	seed := uint64(0)
	number := func(s string) uint64 {
		n, err := strconv.ParseUint(s, 16, 64)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	for _, o := range list {
		for _, p := range o.pairs {
			if o.kind == "SECTION" && p.code == 5 {
				seed = number(p.value)
				continue
			}
			if p.code != 5 && p.code != 105 {
				continue
			}
			h := number(p.value)
			if seen[h] {
				t.Fatalf("handle %s twice", p.value)
			}
			seen[h] = true
		}
	}
	for h := range seen {
		if h >= seed {
			t.Fatalf("handle %X is not below the seed %X", h, seed)
		}
	}
	for _, o := range list {
		owned := false
		for _, p := range o.pairs {
			if p.code >= 320 && p.code < 370 || p.code >= 390 && p.code < 400 {
				if p.code != 370 && !seen[number(p.value)] {
					t.Fatalf("%s points at %s, which is not there", o.kind, p.value)
				}
				owned = owned || p.code == 330
			}
		}
		if v == dxf.R2000 && !owned && (o.section == "ENTITIES" || o.section == "OBJECTS") && o.kind != "SECTION" {
			t.Fatalf("%s has no owner", o.kind)
		}
	}
}

// polylines have as many vertices as they say, closed ones the flag, old ones an end.
func polylines(t testing.TB, list []object) {
	t.Helper()
	inside := false
	for _, o := range list {
		switch o.kind {
		case "LWPOLYLINE":
			n := strconv.Itoa(len(o.all(10)))
			if o.get(90) != n || len(o.all(20)) != len(o.all(10)) || len(o.all(10)) < 2 {
				t.Fatalf("a polyline says %s vertices and has %s", o.get(90), n)
			}
		case "POLYLINE":
			inside = true
		case "VERTEX":
			if !inside {
				t.Fatal("a vertex of nothing")
			}
		case "SEQEND":
			inside = false
		default:
			if inside {
				t.Fatalf("%s inside a polyline", o.kind)
			}
		}
	}
	if inside {
		t.Fatal("a polyline without an end")
	}
}
