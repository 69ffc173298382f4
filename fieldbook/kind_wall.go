package fieldbook

// Wall is a rod held down the wall at a mark, from one edge to another: {wall: r5, from: track, to:
// cove, is: 1.067}. It follows the wall, which may lean.
type Wall struct{}

// WallForm is the item as the file writes it.
type WallForm struct {
	Wall  Name   `book:"wall" jsonschema:"required"`
	From  Choice `book:"from" jsonschema:"required,enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=deck,enum=cove,enum=wall-foot"`
	To    Choice `book:"to" jsonschema:"required,enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=deck,enum=cove,enum=wall-foot"`
	Is    Length `book:"is" jsonschema:"required"`
	Sigma Sigma  `book:"sigma"`
	Common
}

// Edges are the edges between which a wall or a profile is read. Cove is where the rounding at the
// foot of the wall begins; tile the face of the tiles, and down the wall their lower end; wall-foot
// where wall and floor would meet without a cove.
var Edges = []string{"nose", "back", "track", "tile", "waterline", "deck", "cove", "wall-foot"}

// Name of the kind.
func (Wall) Name() string { return "wall" }

// Form of the item.
func (Wall) Form() ItemForm { return &WallForm{} }

func (f *WallForm) build(b *builder) Body {
	r := Reading{Kind: "wall", Marks: []string{f.Wall.text}, From: f.From.text, To: f.To.text, Values: []Value{b.taped(f.Is)}}
	b.edges(f.From, f.To)
	r.Sigma = b.sigmas(f.Sigma, 1)
	return f.fill(b, r)
}

// edges answers an edge that is read from itself.
func (b *builder) edges(from, to Choice) {
	if from.given() && from.text == to.text {
		b.fault(to.at, "self", quoted(to.text)+" from itself", "another edge")
	}
}

func (Wall) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "wall" || len(r.Marks) != 1 || len(r.Values) != 1 {
		return false
	}
	w.text("wall", r.Marks[0])
	w.text("from", r.From)
	w.text("to", r.To)
	w.value("is", r.Values[0])
	r.write(w)
	return true
}
