package fieldbook

import (
	"strings"
	"time"

	"brimline/unit"
)

// JobForm is the block job.
type JobForm struct {
	Name     Text  `book:"name"`
	Ref      Text  `book:"ref"`
	Measured Date  `book:"measured"`
	Start    Clock `book:"start"`
	End      Clock `book:"end"`
	By       Text  `book:"by"`
	Alone    Flag  `book:"alone"`
	Weather  Text  `book:"weather"`
}

func (f *JobForm) build(b *builder, _ string) Body {
	return Job{
		Name: f.Name.text, Ref: f.Ref.text, Measured: b.date(f.Measured), Start: b.clock(f.Start), End: b.clock(f.End),
		By: f.By.text, Alone: f.Alone.text == "true", Weather: f.Weather.text,
	}
}

func (j Job) write(w *writer) {
	w.text("name", j.Name)
	w.text("ref", j.Ref)
	w.text("measured", j.Measured)
	w.text("start", j.Start)
	w.text("end", j.End)
	w.text("by", j.By)
	w.flag("alone", j.Alone)
	w.text("weather", j.Weather)
}

// PrivateForm is the block private.
type PrivateForm struct {
	Owner   Text `book:"owner"`
	Address Text `book:"address"`
	Phone   Text `book:"phone"`
}

func (f *PrivateForm) build(*builder, string) Body {
	return Private{Owner: f.Owner.text, Address: f.Address.text, Phone: f.Phone.text}
}

func (p Private) write(w *writer) {
	w.text("owner", p.Owner)
	w.text("address", p.Address)
	w.text("phone", p.Phone)
}

// UnitsForm is the block units.
type UnitsForm struct {
	Length Choice `book:"length" jsonschema:"enum=m,enum=cm,enum=mm,enum=ft,enum=in"`
}

// length is the meaning of a bare number: metres where nothing is said.
func (f *UnitsForm) length() unit.Unit {
	if f == nil || !f.Length.given() {
		return unit.M
	}
	return unit.Unit(f.Length.text)
}

func (f *UnitsForm) build(*builder, string) Body { return Units{Length: f.length()} }

func (u Units) write(w *writer) { w.text("length", string(u.Length)) }

// date checks a day. The text stays text: no time zone belongs to it.
func (b *builder) date(d Date) string {
	if d.given() {
		if _, err := time.Parse(time.DateOnly, d.text); err != nil {
			b.fault(d.at, "bad-date", quoted(d.text)+" is no date", d.expects())
		}
	}
	return d.text
}

func (b *builder) clock(c Clock) string {
	if c.given() {
		_, err := time.Parse("15:04", c.text)
		if _, long := time.Parse(time.TimeOnly, c.text); err != nil && long != nil {
			b.fault(c.at, "bad-date", quoted(c.text)+" is no time of day", c.expects())
		}
	}
	return c.text
}

// moment reads a time of RFC 3339 and gives it in UTC, so that equal times are equal.
func (b *builder) moment(m Moment) time.Time {
	if !m.given() {
		return time.Time{}
	}
	t, err := time.Parse(time.RFC3339, strings.ToUpper(m.text))
	if err != nil {
		b.fault(m.at, "bad-time", quoted(m.text)+" is no time", m.expects())
		return time.Time{}
	}
	return t.UTC()
}
