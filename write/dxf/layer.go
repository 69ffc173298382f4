package dxf

import (
	"fmt"
	"strings"

	"brimline/sheet"
)

// layerNames gives each layer a name that the release allows and no other layer has, capitals or not.
// Layer 0, which every file has, is nobody's.
func (p *printer) layerNames() {
	p.names = map[sheet.Layer]string{}
	taken := map[string]bool{"0": true}
	for _, l := range p.file.Layers {
		if _, twice := p.names[l.Name]; twice {
			p.fail(fmt.Errorf("layer %q is listed twice", l.Name))
		}
		name := p.layerName(string(l.Name), "")
		for n := 2; taken[strings.ToUpper(name)]; n++ {
			name = p.layerName(string(l.Name), fmt.Sprint("_", n))
		}
		taken[strings.ToUpper(name)] = true
		p.names[l.Name] = name
	}
}

// Longest names of layers.
const (
	longPlain  = 31
	longModern = 255
)

// layerName is a name with an ending as the release allows it: ASCII in both, since readers differ
// in whether they understand escapes in names.
func (p *printer) layerName(name, ending string) string {
	name, most := strings.Map(nameLetter, sheet.Clean(name)), longModern
	if !p.modern() {
		name, most = strings.Map(plainLetter, strings.ToUpper(name)), longPlain
	}
	return or(strings.TrimSpace(cut(name, most-len(ending))), "_") + ending
}

func cut(s string, n int) string { return s[:min(n, len(s))] }

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// plainLetter keeps the letters of a name of R12: capitals, figures, dollar, dash, underscore.
func plainLetter(r rune) rune {
	if r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '$' || r == '-' {
		return r
	}
	return '_'
}

// nameLetter keeps the letters of a name of R2000: all but those that stand for something.
func nameLetter(r rune) rune {
	if r > 0x7e || strings.ContainsRune("<>/\\\":;?*|,=`^%", r) {
		return '_'
	}
	return r
}

// colours are the numbers of the format's index of colours for the inks, in their order: 7 is black on
// white and white on black; of the others the number nearest to the ink.
var colours = [...]int{7, 8, 7, 122, 142, 30}

func colour(k sheet.Ink) int {
	if k < 0 || int(k) >= len(colours) {
		return colours[0]
	}
	return colours[k]
}

// weights of lines that the format knows, in hundredths of a millimetre.
var weights = []int{0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211}

// weight is the nearest of them.
func weight(mm float64) int {
	best := weights[0]
	for _, w := range weights {
		if distance(w, mm) < distance(best, mm) {
			best = w
		}
	}
	return best
}

func distance(w int, mm float64) float64 {
	d := float64(w)/100 - mm
	return max(d, -d)
}
