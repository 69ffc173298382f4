package network_test

import (
	"testing"

	"brimline/fieldbook"
	"brimline/finding"
	"brimline/network"
)

// built is the network of a field book.
func built(t *testing.T, text string) (*network.Network, []finding.Finding) {
	t.Helper()
	b, err := fieldbook.Parse("test.yaml", []byte("brimline: 1\n"+text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	n, found := network.Build(&b, nil)
	return n, found
}

func codes(found []finding.Finding) []string {
	var out []string
	for _, f := range found {
		out = append(out, f.Code)
	}
	return out
}
