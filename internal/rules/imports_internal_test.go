package rules

import "testing"

func TestImportTable(t *testing.T) {
	for _, c := range []struct {
		from    string
		imports []string
		tests   []string
		breach  int
	}{
		{"plane", []string{"unit"}, []string{"internal/checks", "survey"}, 0},
		{"plane", []string{"mesh", "finding"}, nil, 2},
		{"unit", []string{"plane"}, nil, 1},
		{"network", []string{"fieldbook", "sparse", "plane"}, nil, 0},
		{"network", []string{"adjust"}, nil, 1},
		{"fieldbook", []string{"internal/simulate"}, []string{"internal/simulate"}, 1},
		{"internal/simulate", []string{"plane", "unit"}, nil, 0},
		{"internal/simulate", []string{"fieldbook"}, nil, 1},
		{"read/las", []string{"fieldbook", "read"}, nil, 0},
		{"read/las", []string{"read/dxf"}, nil, 1},
		{"read/dxf", []string{"plane"}, []string{"write/dxf", "sheet"}, 0},
		{"write/dxf", []string{"plane", "sheet", "unit"}, []string{"internal/oracle"}, 0},
		{"write/dxf", []string{"read/dxf"}, nil, 1},
		{"sheet/font", []string{"unit"}, nil, 0},
		{"write/glb", []string{"mesh", "sheet"}, nil, 0},
		{"write/pdf", []string{"mesh"}, nil, 1},
		{"write/pdf", []string{"sheet", "sheet/font"}, nil, 0},
		{"takeoff/liner", []string{"basin", "outline"}, nil, 0},
		{"takeoff/liner", []string{"survey"}, nil, 1},
		{"mistake", []string{"adjust", "network", "fieldbook", "plane", "finding"}, []string{"internal/simulate", "survey"}, 0},
		{"mistake", []string{"locate", "outline", "advise"}, nil, 3},
		{"adjust", []string{"mistake"}, nil, 1},
		{"advise", []string{"takeoff/liner", "survey"}, nil, 1},
		{"advise", []string{"mistake", "outline", "adjust", "network", "plane"}, nil, 0},
		{"survey", []string{"advise", "unit", "read/las"}, nil, 0},
		{"draft", []string{"survey", "adjust", "sheet"}, nil, 0},
		{"pack", []string{"draft", "write/pdf", "survey"}, nil, 0},
		{"web", []string{"survey", "store/sqlite"}, nil, 0},
		{"web", []string{"cmd/brimline"}, nil, 1},
		{"cmd/brimline", []string{"web", "internal/oracle"}, []string{"cmd/brimline"}, 1},
		{"cmd/brimline", []string{"cmd/brimline/internal/answer"}, nil, 0},
		{"cmd/brimline", []string{"cmd/other"}, nil, 1},
		{"internal/proof", []string{"survey", "internal/simulate"}, nil, 0},
		{"survey", []string{"internal/proof", "bench/race"}, nil, 2},
		{"adjust", nil, []string{"cmd/brimline"}, 1},
		{"novelty", nil, nil, 1},
		{"internal/novelty", nil, nil, 1},
	} {
		got := imports(&Package{Path: c.from, Imports: c.imports, TestImports: c.tests})
		if len(got) != c.breach {
			t.Errorf("%s imports %v, tests %v: %q, want %d breaches", c.from, c.imports, c.tests, got, c.breach)
		}
	}
}
