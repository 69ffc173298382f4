package main

import (
	"io"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/sheet"
	"brimline/survey"
	"brimline/write/pdf"
	"brimline/write/svg"
)

// drawing is what the flags of draw say.
type drawing struct {
	to, paper, date string
	sheet           int
	one             bool // only that sheet
	ties            bool
	dxf, units      string
}

func drawCommand(s streams) *cobra.Command {
	var d drawing
	c := &cobra.Command{
		Use:   "draw BOOK -o FILE",
		Short: "Draws the plan as PDF, SVG or DXF, the pool as GLB",
		Long: `draw solves BOOK and writes the drawing to FILE: every sheet of it to a PDF
file, the first to an SVG file; with --sheet only that sheet. The plan is true
to the scale that it names; parts too crowded for their figures follow larger,
as details. Readings in which a mistake shows, checks and the tape proposed next
are drawn on it. The date of issue is the day of measuring
unless --date gives another, so that the same book gives the same bytes.

A DXF file is the drawing at true size, for cutting and setting out: each line
of the book is one polyline with its arcs as arcs, on a layer of its own; marks,
names, dimensions, checks, findings and notes stand on layers that can be
switched off. Lines whose heights are read stand there a second time, in space,
with the floor. Without --units it is in millimetres, in inches for a book in
feet or inches.

A GLB file is the pool in space, in metres, for looking at: floor, walls, what
stands in it, the water, and a band of deck at the height of the rim.`,
		Example: "  brimline draw larch.yaml -o larch.pdf\n  brimline draw larch.yaml -o larch.dxf --dxf r12 --units in\n  brimline draw larch.yaml -o larch.svg --paper A4\n  brimline draw larch.yaml -o ties.svg --sheet 2\n  brimline draw larch.yaml -o larch.glb",
		Args:    words(1, 1, "a book"),
		RunE: func(c *cobra.Command, args []string) error {
			d.one = c.Flags().Changed("sheet")
			if err := d.only(c); err != nil {
				return err
			}
			if err := d.check(); err != nil {
				return err
			}
			book, err := readBook(args[0], s)
			if err != nil {
				return err
			}
			r, err := runBook(c.Context(), &book, s)
			if err != nil {
				return err
			}
			if err := d.write(&book, r); err != nil {
				return err
			}
			return d.remark(r, s)
		},
	}
	f := c.Flags()
	f.StringVarP(&d.to, "output", "o", "", "the file to write: its ending says pdf, svg, dxf or glb")
	f.StringVar(&d.paper, "paper", "A3", "size of the sheets: "+strings.Join(papers(), ", "))
	f.StringVar(&d.date, "date", "", "date of issue, YYYY-MM-DD (default: the day of measuring)")
	f.IntVar(&d.sheet, "sheet", 1, "only this sheet (SVG: the first unless another is said)")
	f.BoolVar(&d.ties, "ties", false, "draw the ties too")
	f.StringVar(&d.dxf, "dxf", "r2000", "release of a DXF file: r2000, or r12 for old machines")
	f.StringVar(&d.units, "units", "", "unit of a DXF file: mm or in (default: as the book)")
	offer(c, "paper", papers())
	offer(c, "dxf", []string{"r2000", "r12"})
	offer(c, "units", []string{"mm", "in"})
	return c
}

// offer completes the values of a flag.
func offer(c *cobra.Command, flag string, values []string) {
	complete := cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp)
	if err := c.RegisterFlagCompletionFunc(flag, complete); err != nil {
		panic(err) // there is no such flag: our own mistake
	}
}

func papers() []string {
	names := make([]string, len(sheet.Sizes))
	for i, p := range sheet.Sizes {
		names[i] = p.Name
	}
	return names
}

// format is the ending of the file's name in lower case: pdf, svg, dxf or glb.
func (d drawing) format() string { return strings.TrimPrefix(strings.ToLower(filepath.Ext(d.to)), ".") }

// check refuses flags that mean nothing before any work is done.
func (d drawing) check() error {
	if d.to == "" {
		return refuse("draw needs -o FILE; see brimline draw --help")
	}
	if f := d.format(); f != "pdf" && f != "svg" && f != "dxf" && f != "glb" {
		return refuse("-o %s: the name must end in .pdf, .svg, .dxf or .glb", d.to)
	}
	if err := d.checkDXF(); err != nil {
		return err
	}
	if _, ok := sheet.Paper(d.paper); !ok {
		return refuse("--paper %s: choose one of %s", d.paper, strings.Join(papers(), ", "))
	}
	if _, err := day(d.date); err != nil {
		return refuse("--date %s: write the date as 2026-05-14", d.date)
	}
	if d.sheet < 1 {
		return refuse("--sheet %d: sheets count from 1", d.sheet)
	}
	return folder("-o "+d.to, d.to)
}

func (d drawing) write(b *fieldbook.Book, r *survey.Result) error {
	switch d.format() {
	case "dxf":
		return d.writeDXF(b, r)
	case "glb":
		return d.writeGLB(b, r)
	}
	date := d.issued(b)
	sheets := draft.Plan(b, r, draft.Options{Paper: d.paper, Date: date, Version: version, ShowTies: d.ties})
	if d.sheet > len(sheets) {
		return refuse("--sheet %d: this drawing has %d", d.sheet, len(sheets))
	}
	if d.format() == "svg" {
		return writeFile(d.to, func(w io.Writer) error { return svg.Write(w, sheets[d.sheet-1]) })
	}
	if d.one {
		sheets = sheets[d.sheet-1 : d.sheet]
	}
	if date.IsZero() {
		date = time.Unix(0, 0).UTC() // a PDF file must have a date, and now would change its bytes
	}
	meta := pdf.Meta{Title: b.Name, Author: b.Job.By, Subject: "Plan as measured", Created: date}
	return writeFile(d.to, func(w io.Writer) error { return pdf.Write(w, sheets, meta) })
}

// issued is the date of issue: the flag's, else the day of measuring, else none.
func (d drawing) issued(b *fieldbook.Book) time.Time {
	for _, s := range []string{d.date, b.Job.Measured} {
		if t, err := day(s); err == nil && !t.IsZero() {
			return t
		}
	}
	return time.Time{}
}

// day reads YYYY-MM-DD; nothing is the zero time.
func day(s string) (time.Time, error) {
	if s == "" {
		return time.Time{}, nil
	}
	return time.Parse(time.DateOnly, s)
}
