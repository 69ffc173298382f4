package sheet_test

import (
	"testing"

	"brimline/sheet"
)

func TestTypeset(t *testing.T) {
	for in, want := range map[string]string{
		`17' 1 1/4"`:         "17′ 1¹⁄₄″",
		"17′ 11 15/16″":      "17′ 11¹⁵⁄₁₆″",
		`1/2"`:               "¹⁄₂″",
		`0' 0 1/16"`:         "0′ 0¹⁄₁₆″",
		"12-6-1/2":           "12-6-¹⁄₂",
		"5.214":              "5.214",
		"-5.214":             "−5.214",
		"2026-05-14":         "2026-05-14",
		"and/or":             "and/or",
		"3/":                 "3/",
		"/4":                 "/4",
		"1/2/3":              "1/2/3",
		"it's 'so'":          "it's 'so'",
		"":                   "",
		"known to 1/2″, 3 m": "known to ¹⁄₂″, 3 m",
	} {
		if got := sheet.Typeset(in); got != want {
			t.Errorf("Typeset(%q) = %q, want %q", in, got, want)
		}
	}
}

// Setting a set text changes nothing.
func TestTypesetTwice(t *testing.T) {
	for _, s := range []string{`17' 1 1/4"`, "−3′ 0¹⁄₂″", "-0.1 x 2"} {
		once := sheet.Typeset(s)
		if twice := sheet.Typeset(once); twice != once {
			t.Errorf("%q became %q", once, twice)
		}
	}
}
