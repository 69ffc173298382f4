// Package whole measures the whole chain, from a parsed book to the result, on simulated books in
// which three readings in a hundred are wrong: `go test ./bench/whole -run '^$' -bench .`
package whole
