package locate

import (
	"math"

	"brimline/network"
	"brimline/plane"
)

// pose is an instrument's place: plan = at + R(turn)·local/scale.
type pose struct {
	at    plane.Point
	turn  float64
	scale float64
}

func (p *pose) out(l plane.Point) plane.Point { return p.at.Add(l.Mul(1 / p.scale).Turn(p.turn)) }

// local is the point as the instrument gave it, y upward.
func local(o *network.Obs) plane.Point {
	y := o.Values[1]
	if o.Flip {
		y = -y
	}
	return plane.Point{X: o.Values[0], Y: y}
}

// poseSetups finds the pose of set-ups that see two placed marks: every pair of them proposes
// one, all of them vote, and the winner is fitted to those that agree.
func (g *growth) poseSetups() {
	for s := range g.pose {
		if g.pose[s] != nil {
			continue
		}
		from, to := g.sights(s)
		free := g.n.Dim(g.n.SetupBlock(s)) == 4
		if p := vote(from, to, free); p != nil {
			g.pose[s] = p
			g.pinned = g.pinned || offLine(to)
			for m := range g.dirty {
				g.dirty[m] = true
			}
		}
	}
}

// handFrom: marks this far off one line tell left from right (metres).
const handFrom = 0.05

// offLine says that points do not stand in one line: a set-up that sees them knows the hand.
func offLine(pts []plane.Point) bool {
	if len(pts) < 3 {
		return false
	}
	far := pts[1]
	for _, p := range pts[2:] {
		if p.Dist(pts[0]) > far.Dist(pts[0]) {
			far = p
		}
	}
	d := far.Sub(pts[0]).Unit()
	for _, p := range pts[1:] {
		if math.Abs(d.Cross(p.Sub(pts[0]))) > handFrom {
			return true
		}
	}
	return false
}

// readsHand says that an offset or a set-up shows on which hand a placed mark lies.
func (g *growth) readsHand(m int) bool {
	for _, i := range g.of[m] {
		o := &g.n.Obs[i]
		switch o.Kind.(type) {
		case network.Offset:
			if g.placed[o.Marks[0]] && g.placed[o.Marks[1]] && g.placed[o.Marks[2]] && math.Abs(o.Values[1]) > handFrom {
				return true
			}
		case network.Seen:
			if _, to := g.sights(o.Setup - len(g.n.Marks)); offLine(to) {
				return true
			}
		}
	}
	return false
}

// sights lists the placed marks that a set-up sees: as it gave them, and where they are. Lent
// sights count where there are fewer than two others.
func (g *growth) sights(setup int) (from, to []plane.Point) {
	take := func(borrowed bool) {
		for i := range g.n.Obs {
			o := &g.n.Obs[i]
			if _, ok := o.Kind.(network.Seen); ok && (o.Use || o.Sketch) && lent(o) == borrowed && o.Setup == len(g.n.Marks)+setup && g.placed[o.Marks[0]] {
				from, to = append(from, local(o)), append(to, g.pos[o.Marks[0]])
			}
		}
	}
	if take(false); len(from) < 2 {
		take(true)
	}
	return from, to
}

// vote tries each pair that is far enough apart; at most agreeWithin of misfit counts as a vote.
func vote(from, to []plane.Point, free bool) *pose {
	const agreeWithin = 0.06
	var best *pose
	most := 0.0
	for i := range from {
		for j := i + 1; j < len(from) && j < i+40; j++ {
			l := from[i].Dist(from[j])
			d := to[i].Dist(to[j])
			if l < 0.4 || d < 0.4 || (!free && math.Abs(l-d) > agreeWithin && len(from) > 2) {
				continue
			}
			p := posePair(from[i], from[j], to[i], to[j], free)
			votes := 0.0
			for k := range from {
				e := p.out(from[k]).Dist(to[k])
				votes += math.Max(0, 1-e*e/(4*agreeWithin*agreeWithin))
			}
			votes += 0.01 * math.Min(l, 20) // the longer pair between equals
			if best == nil || votes > most {
				best, most = p, votes
			}
		}
	}
	if best == nil {
		return nil
	}
	var a, b []plane.Point
	for k := range from {
		if best.out(from[k]).Dist(to[k]) < 2*agreeWithin {
			a, b = append(a, from[k].Mul(1/best.scale)), append(b, to[k])
		}
	}
	if len(a) >= 2 {
		if r, ok := plane.FitRigid(a, b, nil); ok {
			return &pose{at: r.T, turn: r.Angle(), scale: best.scale}
		}
	}
	return best
}

func posePair(a, b, p, q plane.Point, free bool) *pose {
	scale := 1.0
	if free {
		scale = a.Dist(b) / p.Dist(q)
	}
	turn := plane.Angle(q.Sub(p)) - plane.Angle(b.Sub(a))
	mid := p.Add(q).Mul(0.5)
	at := mid.Sub(a.Add(b).Mul(0.5 / scale).Turn(turn))
	return &pose{at: at, turn: turn, scale: scale}
}
