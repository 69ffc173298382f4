package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"brimline/draft"
	"brimline/fieldbook"
	"brimline/sheet"
	"brimline/survey"
	"brimline/unit"
	"brimline/write/dxf"
)

// only refuses flags that belong to another kind of file.
func (d drawing) only(c *cobra.Command) error {
	f := d.format()
	for _, flag := range []string{"sheet", "ties", "date"} {
		if (f == "dxf" || f == "glb") && c.Flags().Changed(flag) {
			return refuse("--%s means nothing for a %s file", flag, strings.ToUpper(f))
		}
	}
	for _, flag := range []string{"dxf", "units"} {
		if f != "dxf" && c.Flags().Changed(flag) {
			return refuse("--%s is for DXF files", flag)
		}
	}
	return nil
}

// checkDXF refuses releases and units that are not offered.
func (d drawing) checkDXF() error {
	if d.dxf != "r2000" && d.dxf != "r12" {
		return refuse("--dxf %s: choose r2000 or r12", d.dxf)
	}
	if d.units != "" && d.units != "mm" && d.units != "in" {
		return refuse("--units %s: choose mm or in", d.units)
	}
	return nil
}

func (d drawing) writeDXF(b *fieldbook.Book, r *survey.Result) error {
	f := dxf.File{Model: draft.Outlines(b, r, draft.Options{Paper: d.paper, Version: version}, d.unit(b))}
	if d.dxf == "r12" {
		f.Version = dxf.R12
	}
	return writeFile(d.to, func(w io.Writer) error { return dxf.Write(w, f) })
}

// unit of a DXF file: the flag's, else that of the book's own family.
func (d drawing) unit(b *fieldbook.Book) sheet.ModelUnit {
	feet := b.Units.Length == unit.FT || b.Units.Length == unit.IN
	if d.units == "in" || d.units == "" && feet {
		return sheet.Inches
	}
	return sheet.Millimetres
}
