package fieldbook

// Profile is a step from one edge to another at a mark: {profile: r5, from: nose, to: track, outward:
// 32 mm, down: 48 mm}. Outward is away from the water.
type Profile struct{}

// ProfileForm is the item as the file writes it: outward or inward, down or up, never a sign. Either
// direction may be left out.
type ProfileForm struct {
	Profile Name   `book:"profile" jsonschema:"required"`
	From    Choice `book:"from" jsonschema:"required,enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=deck,enum=cove,enum=wall-foot"`
	To      Choice `book:"to" jsonschema:"required,enum=nose,enum=back,enum=track,enum=tile,enum=waterline,enum=deck,enum=cove,enum=wall-foot"`
	Outward Length `book:"outward"`
	Inward  Length `book:"inward"`
	Down    Length `book:"down"`
	Up      Length `book:"up"`
	Sigma   Sigma  `book:"sigma"`
	Common
}

// Name of the kind.
func (Profile) Name() string { return "profile" }

// Form of the item.
func (Profile) Form() ItemForm { return &ProfileForm{} }

func (f *ProfileForm) build(b *builder) Body {
	r := Reading{Kind: "profile", Marks: []string{f.Profile.text}, From: f.From.text, To: f.To.text}
	b.edges(f.From, f.To)
	if f.Outward.given() || f.Inward.given() {
		r.Values = append(r.Values, b.hand(f.Profile.at, "outward", f.Outward, f.Inward, "a step goes outward or inward", "one of outward, inward"))
	}
	if f.Down.given() || f.Up.given() {
		r.Values = append(r.Values, b.hand(f.Profile.at, "down", f.Down, f.Up, "a step goes down or up", "one of down, up"))
	}
	if len(r.Values) == 0 {
		b.fault(f.Profile.at, "one-of", "a step that goes nowhere", "outward or inward, down or up, or one of each")
	}
	r.Sigma = b.sigmas(f.Sigma, max(1, len(r.Values)))
	return f.fill(b, r)
}

func (Profile) write(w *writer, body Body) bool {
	r, ok := body.(Reading)
	if !ok || r.Kind != "profile" || len(r.Marks) != 1 || len(r.Values) == 0 {
		return false
	}
	w.text("profile", r.Marks[0])
	w.text("from", r.From)
	w.text("to", r.To)
	for _, v := range r.Values {
		if v.Part == "outward" {
			w.handed("outward", "inward", v)
		} else {
			w.handed("down", "up", v)
		}
	}
	r.write(w)
	return true
}
