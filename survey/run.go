// Package survey runs the whole chain on one field book and gathers the Result, the plain record
// of everything that was found. It decides nothing itself that an earlier stage can decide.
package survey

import (
	"context"
	"errors"
	"maps"

	"brimline/adjust"
	"brimline/fieldbook"
	"brimline/finding"
	"brimline/locate"
	"brimline/mistake"
	"brimline/network"
	"brimline/outline"
)

// Input of a run. Files are the bytes of the files that the book names. Rules are an office's own
// tables; what the book itself says goes before them. Seed is for stages that draw random
// numbers; none of the present ones does, so it changes nothing.
type Input struct {
	Book  *fieldbook.Book
	Files fieldbook.Files
	Rules fieldbook.Rules
	Seed  uint64

	NextCount int // readings proposed; 0: 3
}

// Step names a stage that begins, for progress.
type Step string

// The steps, in order.
const (
	StepNetwork Step = "numbering the readings"
	StepLocate  Step = "finding the shape"
	StepAdjust  Step = "adjusting"
	StepMistake Step = "looking for mistakes"
	StepOutline Step = "fitting the lines"
	StepResult  Step = "weighing what could still be wrong"
)

// Run computes the Result of a book. step may be nil. The context only cancels; then the error
// is the context's.
func Run(ctx context.Context, in Input, step func(Step)) (*Result, error) {
	r, _, err := run(ctx, in, nil, step)
	return r, err
}

var errNoBook = errors.New("survey: no book given")

// run is Run with the coordinates of an earlier state to begin from; it returns its own.
func run(ctx context.Context, in Input, warm *memory, step func(Step)) (*Result, *memory, error) {
	g, err := gathered(ctx, in, warm, step)
	if err != nil {
		return nil, nil, err
	}
	return g.result(), remember(g.net, g.first), nil
}

// prepare runs the stages for a question that needs no result.
func prepare(ctx context.Context, in Input) (*gather, error) {
	g, err := gathered(ctx, in, nil, nil)
	if err == nil && g.solved() {
		g.settle()
	}
	return g, err
}

// gathered runs the stages in order.
func gathered(ctx context.Context, in Input, warm *memory, step func(Step)) (*gather, error) {
	if in.Book == nil {
		return nil, errNoBook
	}
	if step == nil {
		step = func(Step) {}
	}
	in.Book = withRules(in.Book, in.Rules)
	g := &gather{ctx: ctx, book: in.Book, count: in.NextCount}
	step(StepNetwork)
	var found []finding.Finding
	g.found = append(g.found, in.Book.Findings...)
	g.net, found = network.Build(in.Book, in.Files)
	g.found = append(g.found, found...)
	step(StepLocate)
	g.start = locate.Find(g.net)
	g.found = append(g.found, g.start.Findings...)
	unsketch(g.net, g.start.X)
	step(StepAdjust)
	if err := g.adjust(warm); err != nil {
		return nil, err
	}
	if err := g.hold(in.Files); err != nil {
		return nil, err
	}
	step(StepMistake)
	if g.rep = mistake.Find(ctx, g.sol, in.Book); g.rep == nil {
		return nil, ctx.Err()
	}
	g.first, g.sol = g.sol, g.rep.Solution
	g.found = append(g.found, g.sol.Findings()...)
	step(StepOutline)
	g.fit()
	step(StepResult)
	return g, nil
}

// adjust solves from the located start, or from the last state where that is sound.
func (g *gather) adjust(warm *memory) error {
	begin := warm.apply(g.net, g.start.X)
	g.sol, _ = adjust.Solve(g.ctx, g.net, begin, adjust.Options{Fallback: g.start.X})
	if err := g.ctx.Err(); err != nil {
		return err
	}
	if kept, ok := keepHand(g.net, g.start.X, g.sol.X); ok {
		robust := g.sol.Robust
		if g.sol, _ = adjust.Solve(g.ctx, g.net, kept, adjust.Options{NoRobust: true}); g.sol == nil {
			return g.ctx.Err()
		}
		if g.sol.Robust = robust; robust != nil {
			if kept, ok := keepHand(g.net, g.start.X, robust); ok {
				g.sol.Robust = kept
			}
		}
	}
	return g.ctx.Err()
}

// fit fits the lines of the book.
func (g *gather) fit() {
	for _, l := range g.book.Lines {
		if l.From != "" {
			continue
		}
		if !g.solved() {
			g.lines = append(g.lines, &outline.Line{Name: l.Name, Closed: l.Closed, Edge: l.Edge, Waits: l.MarkNames()})
			continue
		}
		fitted, f := outline.Fit(g.sol, g.spec(l), g.net.Edge)
		g.lines = append(g.lines, fitted)
		g.found = append(g.found, f...)
	}
	g.derive()
}

// spec numbers a line of the book. A corner that was read after all is a mark like others.
func (g *gather) spec(l fieldbook.Line) outline.Spec {
	out := outline.Spec{Name: l.Name, Edge: l.Edge, Closed: l.Closed}
	for _, r := range l.Runs {
		run := outline.SpecRun{Kind: r.Kind, Joint: r.Joint, Names: r.Marks, Sigma: r.Sigma, Slide: r.Slide}
		for _, m := range r.Marks {
			i := g.number(m)
			run.Marks = append(run.Marks, i)
			if c, ok := g.book.Corner(m); ok && i < 0 {
				out.Corners = g.corner(out.Corners, c)
			}
		}
		out.Runs = append(out.Runs, run)
	}
	return out
}

// number of a mark in the network, −1 of one that no reading names.
func (g *gather) number(mark string) int {
	if i, ok := g.net.ByName[mark]; ok {
		return i
	}
	return -1
}

// corner adds an unreached corner to those of a line, once.
func (g *gather) corner(have []outline.Corner, c fieldbook.Corner) []outline.Corner {
	for _, h := range have {
		if h.Name == c.Name {
			return have
		}
	}
	out := outline.Corner{Name: c.Name, Round: c.Round, Sigma: c.Sigma, Like: c.Like, MeetNames: c.Meet}
	for i, pair := range c.Meet {
		out.Meet[i] = [2]int{g.number(pair[0]), g.number(pair[1])}
	}
	return append(have, out)
}

// withRules is the book with the tables of an office under its own.
func withRules(b *fieldbook.Book, r fieldbook.Rules) *fieldbook.Book {
	if len(r.Sigma) == 0 && len(r.Priors) == 0 {
		return b
	}
	under := func(office, own map[string]float64) map[string]float64 {
		both := maps.Clone(office)
		if both == nil {
			both = map[string]float64{}
		}
		maps.Copy(both, own)
		return both
	}
	c := *b
	c.Rules = fieldbook.Rules{Sigma: under(r.Sigma, b.Rules.Sigma), Priors: under(r.Priors, b.Rules.Priors)}
	return &c
}
