package unit

// The codes of an Error. They are stable: programs and tests may compare them.
const (
	Empty        = "empty"         // no text
	Unreadable   = "unreadable"    // not a spelling that is known
	DecimalComma = "decimal-comma" // a comma where a point is meant
	InchesOver   = "inches-over"   // twelve inches or more beside feet
	MinutesOver  = "minutes-over"  // sixty minutes or seconds of arc or more
	Fraction     = "fraction"      // a denominator that is no power of two, or a fraction of one or more
	Ambiguous    = "ambiguous"     // could mean two things
	NotFinite    = "not-finite"    // NaN or infinite
	TooLarge     = "too-large"     // beyond what a survey can hold
)

// Error says why a text could not be read. Expected says what to write instead.
type Error struct{ Code, Text, Expected string }

// Error gives the text as typed and what to write instead.
func (e *Error) Error() string {
	switch e.Code {
	case Empty:
		return "nothing written: expected " + e.Expected
	case Unreadable:
		return e.Text + ": not readable: expected " + e.Expected
	case Ambiguous:
		return e.Text + " can mean two things: write " + e.Expected
	case NotFinite, TooLarge:
		return e.Text + ": expected " + e.Expected
	}
	return e.Text + ": write " + e.Expected
}

func fail(code, text, expected string) error {
	const most = 60
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + "…"
	}
	return &Error{Code: code, Text: text, Expected: expected}
}
