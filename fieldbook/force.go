package fieldbook

import "sort"

// target is the entry that e takes out of force, "" none.
func target(e Entry) ID {
	if s, ok := e.Body.(Strike); ok {
		return s.Of
	}
	return e.Replaces
}

// force says which entries of a log hold.
type force struct {
	out     map[ID]bool
	circles [][]ID // entries that strike or replace each other in a circle; they hold
}

// inForce: an entry holds unless one that holds strikes or replaces it. Striking a strike thus
// undoes it, and striking a replacement brings the replaced entry back. As every entry has at
// most one target, what is left undecided is circles, and all of their entries hold.
func inForce(l Log) force {
	at := make(map[ID]int, len(l))
	for i, e := range l {
		at[e.ID] = i
	}
	to := make([]int, len(l))
	open := make([]int, len(l)) // strikes of it that are not decided yet
	for i, e := range l {
		to[i] = -1
		if t := target(e); t != "" {
			if j, ok := at[t]; ok {
				to[i] = j
				open[j]++
			}
		}
	}
	const holds, gone = 1, 2
	state := make([]int, len(l))
	var queue []int
	decide := func(i, s int) {
		state[i] = s
		queue = append(queue, i)
	}
	for i := range l {
		if open[i] == 0 {
			decide(i, holds)
		}
	}
	for len(queue) > 0 {
		i := queue[0]
		queue = queue[1:]
		t := to[i]
		if t < 0 || state[t] != 0 {
			continue
		}
		if open[t]--; state[i] == holds {
			decide(t, gone)
		} else if open[t] == 0 {
			decide(t, holds)
		}
	}
	f := force{out: map[ID]bool{}}
	for i, e := range l {
		if state[i] == gone {
			f.out[e.ID] = true
		}
		if state[i] == 0 {
			f.circles = append(f.circles, circle(l, to, state, i, holds))
		}
	}
	return f
}

// circle walks round from one undecided entry and marks what it meets.
func circle(l Log, to, state []int, from, holds int) []ID {
	var ids []ID
	for i := from; state[i] == 0; i = to[i] {
		state[i] = holds
		ids = append(ids, l[i].ID)
	}
	sort.Slice(ids, func(i, j int) bool { return ids[i] < ids[j] })
	return ids
}
