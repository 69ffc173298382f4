package fieldbook

import (
	"sort"

	"brimline/finding"
)

// Merge joins two logs: the union by id, sorted by id. It gives the same log in whichever order
// logs are merged, and however often. Findings: two entries of one id that differ (of which the
// one kept is the same everywhere), and two entries in force that replace the same one (both are
// kept).
func Merge(a, b Log) (Log, []finding.Finding) {
	l, found := union(append(append(Log(nil), a...), b...))
	_, more := l.judge()
	return l, append(found, more...)
}

// union keeps one entry an id: of several the first by its text, so that the choice does not
// depend on the order of arrival.
func union(l Log) (Log, []finding.Finding) {
	type spelled struct {
		e    Entry
		text string
	}
	all := make([]spelled, len(l))
	for i, e := range l {
		all[i] = spelled{e, verbatim(e)}
	}
	sort.Slice(all, func(i, j int) bool {
		if all[i].e.ID != all[j].e.ID {
			return all[i].e.ID < all[j].e.ID
		}
		return all[i].text < all[j].text
	})
	var out Log
	var found []finding.Finding
	told := false
	for _, s := range all {
		n := len(out)
		if n == 0 || out[n-1].ID != s.e.ID {
			out, told = append(out, s.e), false
			continue
		}
		if !told && normal(out[n-1]) != normal(s.e) {
			found = append(found, finding.Finding{Code: "same-id", Words: map[string]string{"id": string(s.e.ID)}})
			told = true
		}
	}
	return out, found
}
