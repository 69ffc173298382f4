package rules

import (
	"fmt"
	"path"
	"slices"
	"strings"
)

// row says what the packages of the chain may import of the module. "x/*" stands for the
// packages in a folder; a package in a folder without a row of its own goes by its folder's.
type row struct {
	pkg string
	may []string
}

var leaves = []string{"unit", "finding", "sparse", "plane", "mesh", "sheet"}

// chain are the packages beyond the leaves that advise may use: those of the rows before it.
var chain = []string{"fieldbook", "read/*", "network", "locate", "adjust", "mistake", "outline", "basin", "takeoff/*"}

// table is the one of the design, section 2, and the packages beside the chain.
var table = []row{
	{"unit", nil},
	{"finding", nil},
	{"sparse", nil},
	{"plane", []string{"unit"}},
	{"mesh", []string{"plane"}},
	{"sheet", []string{"plane", "unit"}},
	{"fieldbook", leaves},
	{"read/*", with("fieldbook")},
	{"network", with("fieldbook")},
	{"locate", with("network")},
	{"adjust", with("locate", "network")},
	{"mistake", with("adjust", "network", "fieldbook")},
	{"outline", with("adjust")},
	{"basin", with("outline", "adjust")},
	{"takeoff/*", with("basin", "outline", "adjust")},
	{"advise", with(chain...)},
	{"survey", with(more(chain, "advise")...)},
	{"compare", with(more(chain, "advise", "survey")...)},
	{"price", with(more(chain, "advise", "survey")...)},
	{"draft", with(more(chain, "advise", "survey")...)},
	{"write/glb", []string{"sheet", "plane", "unit", "mesh"}},
	{"write/*", []string{"sheet", "plane", "unit"}},
	{"pack", []string{"draft", "write/*", "survey"}},
	{"exchange", []string{"fieldbook", "finding"}},
	{"store/*", []string{"fieldbook", "finding"}},
	{"web", []string{"*"}},
	{"cmd/*", []string{"*"}},
	{"bench/*", []string{"*"}},
	{"examples", nil},
	{"internal/simulate", []string{"plane", "unit"}},
	{"internal/parallels", []string{"plane"}},
	{"internal/deps", nil},
	{"internal/checks", nil},
	{"internal/oracle", nil},
	{"internal/rules", nil},
	{"internal/proof", []string{"*"}},
	{"internal/schema", []string{"*"}},
}

// onlyTests are imported by tests and by nothing else.
var onlyTests = []string{"internal/checks", "internal/oracle", "internal/rules"}

// with is the leaves and some more.
func with(others ...string) []string { return more(leaves, others...) }

func more(list []string, others ...string) []string {
	return append(list[:len(list):len(list)], others...)
}

// imports holds a package to the table.
func imports(p *Package) []string {
	r, ok := rowOf(p.Path)
	if !ok {
		return []string{p.Path + ": the import table has no row for it"}
	}
	var out []string
	for _, i := range p.Imports {
		switch {
		case family(p.Path, i):
		case matches("cmd/*", i):
			out = append(out, fmt.Sprintf("%s imports %s: nobody imports cmd", p.Path, i))
		case slices.Contains(onlyTests, i):
			out = append(out, fmt.Sprintf("%s imports %s, which is for tests", p.Path, i))
		case !mayImport(r, i):
			out = append(out, fmt.Sprintf("%s imports %s; it may import %s", p.Path, i, strings.Join(r.may, ", ")))
		}
	}
	for _, i := range p.TestImports {
		if matches("cmd/*", i) && i != p.Path && !family(p.Path, i) {
			out = append(out, fmt.Sprintf("a test of %s imports %s: nobody imports cmd", p.Path, i))
		}
	}
	return out
}

// family says that one of the two stands in the other's folder: always allowed.
func family(a, b string) bool {
	return strings.HasPrefix(a, b+"/") || strings.HasPrefix(b, a+"/")
}

func mayImport(r row, to string) bool {
	return slices.ContainsFunc(r.may, func(pattern string) bool { return matches(pattern, to) })
}

// rowOf is the row of the package or of the nearest folder above that has one.
func rowOf(pkg string) (row, bool) {
	for p := pkg; p != "." && p != "" && p != "internal"; p = path.Dir(p) {
		for _, r := range table {
			if r.pkg == p || r.pkg == p+"/*" || r.pkg == path.Dir(p)+"/*" {
				return r, true
			}
		}
	}
	return row{}, false
}

// matches says that pkg is the pattern, stands below it, or stands in its folder.
func matches(pattern, pkg string) bool {
	base := strings.TrimSuffix(pattern, "/*")
	return pattern == "*" || pkg == base || strings.HasPrefix(pkg, base+"/")
}
