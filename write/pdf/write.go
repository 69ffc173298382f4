package pdf

import (
	"errors"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"brimline/sheet"
)

// Meta is what a document says of itself. Created must be given: the writer asks no clock.
type Meta struct {
	Title, Author, Subject string
	Created                time.Time
}

// perMM is points in a millimetre.
const perMM = 72 / 25.4

var (
	errEmpty  = errors.New("a document needs a sheet")
	errDate   = errors.New("the date of the document is missing")
	errNumber = errors.New("a coordinate is no number")
)

// Write writes the document. An error says that a sheet, the date or a picture's bytes are missing,
// that a coordinate is no number, or what the writer w said; before that nothing is written.
func Write(w io.Writer, sheets []sheet.Sheet, m Meta) error {
	switch {
	case len(sheets) == 0:
		return errEmpty
	case m.Created.IsZero():
		return errDate
	}
	doc := open(sheets[0].Size, m)
	for i, s := range sheets {
		p := &page{doc: doc, height: s.Size.H, pictures: s.Pictures}
		p.draw(s)
		if err := errors.Join(p.err, doc.Error()); err != nil {
			return fmt.Errorf("pdf of sheet %d %q: %w", i+1, s.Title, err)
		}
	}
	if err := doc.Output(w); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// open begins a document whose bytes depend on nothing but its content.
func open(first sheet.Size, m Meta) *fpdf.Fpdf {
	doc := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: first.W, Ht: first.H}})
	doc.SetCatalogSort(true)
	doc.SetCreationDate(m.Created.UTC())
	doc.SetModificationDate(m.Created.UTC())
	doc.SetProducer("brimline", true)
	doc.SetTitle(sheet.Clean(m.Title), true)
	doc.SetAuthor(sheet.Clean(m.Author), true)
	doc.SetSubject(sheet.Clean(m.Subject), true)
	doc.SetLang("en")
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes(family, "", sheet.RegularTTF)
	doc.AddUTF8FontFromBytes(family, "B", sheet.BoldTTF)
	return doc
}

// family is the font's name inside the document.
const family = "brimsans"
