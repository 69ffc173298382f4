package survey_test

import (
	"bytes"
	"strings"
	"testing"

	"brimline/internal/schema"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// What is printed is what the printed schema says.
func TestResultFitsItsSchema(t *testing.T) {
	text, err := schema.Result()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("result.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("result.json")
	if err != nil {
		t.Fatal(err)
	}
	for name, book := range map[string]string{ // order-free: each book is judged alone
		"every kind": everyKind(), "empty": "brimline: 1\n", "one tape": small("", tie("A", "B", 0), rim),
		"swapped columns": written(swap(t).all, courtRim), "two doubtful groups": doubtfulBook(t), "checks": written(withChecks(0.3048), courtRim),
		"no check": small("", ties(), rim), "places wanted": small(three, ties()+diagonals(), rim), "ellipse": oval(12),
	} {
		printed := bytesOf(t, run(t, book))
		got, err := jsonschema.UnmarshalJSON(strings.NewReader(printed))
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(got); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		broken, err := jsonschema.UnmarshalJSON(strings.NewReader(strings.Replace(printed, `"redundancy":`, `"redundance":`, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if s.Validate(broken) == nil {
			t.Errorf("%s: the schema lets a misspelt key pass", name)
		}
	}
}
