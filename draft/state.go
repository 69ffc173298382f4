package draft

import "brimline/sheet"

// stateLook is how a state appears: always its word, then the shape, then the colour.
type stateLook struct {
	word   string
	symbol sheet.Symbol
	ink    sheet.Ink
}

// states is the closed list of words for orders and readings.
var states = []stateLook{
	{"ready", sheet.FilledSquare, sheet.Good},
	{"good", sheet.FilledSquare, sheet.Good},
	{"agrees", sheet.FilledSquare, sheet.Good},
	{"unproven", sheet.HalfSquare, sheet.Open},
	{"lone", sheet.HalfSquare, sheet.Open},
	{"doubtful", sheet.HalfSquare, sheet.Open},
	{"unfit", sheet.BarredSquare, sheet.Wrong},
	{"suspect", sheet.BarredSquare, sheet.Wrong},
	{"disagrees", sheet.BarredSquare, sheet.Wrong},
	{"struck", sheet.NoSymbol, sheet.Grey},
}

// look finds a state; an unknown word stands in black without a shape.
func look(word string) stateLook {
	for _, s := range states {
		if s.word == word {
			return s
		}
	}
	return stateLook{word: word}
}

// stateCell is a state in a table.
func stateCell(word string) sheet.Cell {
	s := look(word)
	return sheet.Cell{Text: s.word, Symbol: s.symbol, Ink: s.ink}
}
