package network

// stretch adds the runs from one mark to another in the direction of the line, and those beside
// whose direction a curve takes over.
func (k *tracker) stretch(runs []Run, from, to int) bool {
	i, a := find(runs, from, true)
	j, b := find(runs, to, false)
	if i < 0 || j < 0 {
		return false
	}
	if !k.l.Closed && (i > j || i == j && a > b) {
		i, a = find(runs, to, true)
		j, b = find(runs, from, false)
	}
	n := len(runs)
	if loop(runs[i]) && n == 1 {
		if b <= a {
			b += len(runs[0].Marks) - 1
		}
		k.add(runs[0], a, b, true)
		return true
	}
	if before := (i + n - 1) % n; i > 0 || k.l.Closed {
		k.beside(runs[before], runs[i], runs[i])
	}
	for first := true; ; first = false {
		end := len(runs[i].Marks) - 1
		if i == j && (!first || b > a) {
			k.add(runs[i], a, b, true)
			break
		}
		k.add(runs[i], a, end, true)
		i, a = (i+1)%n, 0
	}
	if after := (j + 1) % n; after > 0 || k.l.Closed {
		k.beside(runs[after], runs[after], runs[j])
	}
	return true
}

// beside adds a run that only lends its direction to a curve.
func (k *tracker) beside(r, joint, curve Run) {
	if joint.Tangent && curve.bends() && !r.bends() {
		k.add(r, 0, 0, false)
	}
}

// bends says that a run is drawn as a fair curve.
func (r Run) bends() bool {
	return r.Kind != "straight" && r.Kind != "arc" || loop(r) && r.Kind == "arc"
}

func loop(r Run) bool { return len(r.Marks) > 3 && r.Marks[0] == r.Marks[len(r.Marks)-1] }

// find is the run and the place of a mark: of a joint the start of the later run, or the end of
// the earlier; run −1 where the line has no such mark.
func find(runs []Run, mark int, later bool) (run, at int) {
	run = -1
	for i, r := range runs {
		for p, m := range r.Marks {
			if m != mark {
				continue
			}
			if apt := later && p < len(r.Marks)-1 || !later && p > 0; apt || run < 0 {
				run, at = i, p
				if apt {
					return run, at
				}
			}
		}
	}
	return run, at
}
