package sheet_test

import (
	"math"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"brimline/internal/checks"
	"brimline/sheet"
)

func faces(t *testing.T) map[bool]*sfnt.Font {
	t.Helper()
	out := map[bool]*sfnt.Font{}
	for bold, ttf := range map[bool][]byte{false: sheet.RegularTTF, true: sheet.BoldTTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		out[bold] = f
	}
	return out
}

// The table of widths is the font's own.
func TestWidthsAreTheFonts(t *testing.T) {
	var buf sfnt.Buffer
	const em = 1000
	for bold, f := range faces(t) {
		for r := rune(0x20); r < 0x2600; r++ {
			i, err := f.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			if has := i != 0; has != sheet.Covers(r) {
				t.Errorf("%q: in the font %v, covered %v", r, has, sheet.Covers(r))
			}
			if i == 0 {
				continue
			}
			a, err := f.GlyphAdvance(&buf, i, fixed.I(em), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			want := float64(a) / 64
			got := sheet.Width(string(r), 1, bold) / sheet.Em(1) * em
			if math.Abs(got-want) > 0.51 {
				t.Errorf("%q bold %v: %g thousandths, the font says %g", r, bold, got, want)
			}
		}
	}
}

// Heights are those of the capitals, to the half percent that the two weights differ.
func TestCapHeight(t *testing.T) {
	var buf sfnt.Buffer
	for bold, f := range faces(t) {
		m, err := f.Metrics(&buf, fixed.I(1000), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(m.CapHeight) / 64 / 1000 * sheet.Em(1); math.Abs(got-1) > 0.006 {
			t.Errorf("bold %v: capitals are %g of the height asked for", bold, got)
		}
	}
}

func TestFiguresAreTabular(t *testing.T) {
	for _, set := range []string{"0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"} {
		for _, bold := range []bool{false, true} {
			first, _ := utf8.DecodeRuneInString(set)
			for _, r := range set {
				if sheet.Width(string(r), 1, bold) != sheet.Width(string(first), 1, bold) {
					t.Errorf("%q is not as wide as %q", r, first)
				}
			}
		}
	}
}

func TestSignsAreThere(t *testing.T) {
	for _, r := range "0123456789′″°−×½¼¾⁄±≤≥–…²³χσ◊ÄÖÜßéñçøåłğžЖΩ" {
		if !sheet.Covers(r) {
			t.Errorf("%q is missing", r)
		}
	}
}

func TestLicenceIsThere(t *testing.T) {
	text, err := os.ReadFile("font/OFL.txt")
	if err != nil || !strings.Contains(string(text), "SIL OPEN FONT LICENSE") || !strings.Contains(string(text), "Reserved Font Name") {
		t.Errorf("the licence of the font: %v", err)
	}
	var buf sfnt.Buffer
	for _, f := range faces(t) {
		name, err := f.Name(&buf, sfnt.NameIDFamily)
		if err != nil || name != sheet.Family {
			t.Errorf("the font calls itself %q (%v)", name, err)
		}
	}
}

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"plain": "plain", "a\x00b\x1bc": "abc", "two\nlines\t": "two lines ", "bad\xffbyte": "bad◊byte", "漢": "◊", "soft\u00adhyphen": "softhyphen",
		"\u202ezero\u200b": "◊zero", "<&>": "<&>",
	} {
		if got := sheet.Clean(in); got != want {
			t.Errorf("Clean(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestWrap(t *testing.T) {
	const width = 40.0
	text := "an error of up to 62" + sheet.Glue + "mm could hide in the reading and nobody would see it averyverylongwordthatcannotbebrokenanywhere end"
	lines := sheet.Wrap(text, 2.5, false, width)
	if got := strings.Join(lines, " "); got != strings.ReplaceAll(text, sheet.Glue, " ") {
		t.Errorf("words were lost: %q", got)
	}
	long := 0
	for _, l := range lines {
		if sheet.Width(l, 2.5, false) > width {
			long++
			if strings.Contains(l, " ") {
				t.Errorf("line %q is too wide and can be broken", l)
			}
		}
		if strings.HasSuffix(l, "62") {
			t.Errorf("glue was broken after %q", l)
		}
	}
	if long != 1 || len(lines) < 4 {
		t.Errorf("%d lines, %d too wide", len(lines), long)
	}
}

// Outside check D-03: the heights that drawings use stand in the series of ISO 3098-0.
func TestHeightsOfISO3098(t *testing.T) {
	item := checks.Get(t, "D-03")
	for _, h := range []float64{2.5, 3.5, 5, 7} {
		found := false
		for _, s := range item.Expected.List("lettering_h_mm") {
			found = found || s == h
		}
		if !found {
			t.Errorf("%g mm is no height of the series", h)
		}
	}
}
