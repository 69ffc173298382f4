package fieldbook

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// place is a line and a column, both from 1; the column counts characters. Zero: nowhere.
type place struct{ line, column int }

// located is embedded in a form that keeps where it stands.
type located struct{ at place }

func (l *located) locate(at place) { l.at = at }

type shape byte

const (
	single  shape = iota // one value: its text
	nothing              // no value written, or null
	list
	mapping
)

// node is one value of the document.
type node struct {
	shape shape
	at    place
	text  string // single: as typed, quotes and escapes undone
	plain bool   // single: not quoted
	flow  bool   // list, mapping: in brackets
	end   place  // flow: the closing bracket
	comma bool   // flow: a comma stands before the closing bracket
	items []*node
	pairs []pair
}

type pair struct {
	key   string
	at    place
	value *node
}

// source is the text with its lines.
type source struct {
	bytes []byte
	lines []int // offset of the first byte of each
}

func newSource(src []byte) *source {
	s := &source{bytes: src, lines: []int{0}}
	for i, c := range src {
		if c == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
	return s
}

// offset is the byte at a place; beyond a line's end the next line, beyond the last the end.
func (s *source) offset(p place) int {
	if p.line > len(s.lines) {
		return len(s.bytes)
	}
	i := s.lines[max(p.line, 1)-1]
	for n := 1; n < p.column && i < len(s.bytes); n++ {
		_, size := utf8.DecodeRune(s.bytes[i:])
		i += size
	}
	return i
}

// line is the bytes of a line without its end.
func (s *source) line(n int) []byte {
	if n < 1 || n > len(s.lines) {
		return nil
	}
	end := len(s.bytes)
	if n < len(s.lines) {
		end = s.lines[n] - 1
	}
	return s.bytes[s.lines[n-1]:end]
}

// tree reads the document into nodes; the root is nil where nothing is written. The text must
// have passed scan.
func (s *source) tree() (root *node, fs Faults) {
	defer func() {
		// The YAML library is given strangers' bytes; should it stumble, the book is refused.
		if r := recover(); r != nil {
			root, fs = nil, Faults{{Line: 1, Column: 1, Code: "syntax", Text: fmt.Sprint("this is not YAML: ", r)}}
		}
	}()
	// The library miscounts lines that end in a carriage return; places do not depend on it.
	tokens := lexer.Tokenize(strings.ReplaceAll(string(s.bytes), "\r\n", "\n"))
	if bad := tokens.InvalidToken(); bad != nil {
		return nil, Faults{s.syntax(bad, bad.Error)}
	}
	if fs := guardTokens(tokens); len(fs) > 0 {
		return nil, fs
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		return nil, Faults{s.syntaxError(err)}
	}
	for _, d := range file.Docs {
		if d.Body != nil {
			return s.node(d.Body, place{1, 1}), nil
		}
	}
	return nil, nil
}

func (s *source) syntaxError(err error) Fault {
	var at interface {
		GetToken() *token.Token
		GetMessage() string
	}
	if errors.As(err, &at) && at.GetToken() != nil {
		return s.syntax(at.GetToken(), at.GetMessage())
	}
	text, _, _ := strings.Cut(err.Error(), "\n")
	return Fault{Line: 1, Column: 1, Code: "syntax", Text: "this is not YAML: " + text}
}

func (s *source) syntax(tk *token.Token, message string) Fault {
	f := Fault{Line: 1, Column: 1}
	if tk.Position != nil {
		f.Line, f.Column = max(tk.Position.Line, 1), max(tk.Position.Column, 1)
	}
	f.Code = syntaxCode(s.line(f.Line))
	f.Text = "this is not YAML: " + message
	if f.Code == "tab" {
		f.Text, f.Expected = "a tab in the indentation", "spaces"
	}
	return f
}

// node makes a plain node of the library's. key is the place of the key before, which stands
// for a value that is not written.
func (s *source) node(n ast.Node, key place) *node {
	out := &node{at: key}
	if tk := n.GetToken(); tk != nil && tk.Position != nil && tk.Position.Line > 0 && tk.Position.Column > 0 {
		out.at = place{tk.Position.Line, tk.Position.Column}
	}
	switch n := n.(type) {
	case *ast.MappingNode:
		s.mapping(out, n)
	case *ast.SequenceNode:
		out.shape, out.flow = list, n.IsFlowStyle
		out.ends(n.End)
		for _, v := range n.Values {
			out.items = append(out.items, s.node(v, out.at))
		}
	case *ast.NullNode:
		s.null(out, n, key)
	case *ast.LiteralNode:
		// The line end behind a block text says nothing; at the end of a file it may be missing.
		out.text = strings.TrimRight(n.Value.Value, "\n")
	case *ast.StringNode:
		out.text = n.Value
		out.plain = n.Token.Type == token.StringType
	default:
		out.text, out.plain = n.GetToken().Value, true
	}
	return out
}

func (s *source) mapping(out *node, n *ast.MappingNode) {
	out.shape, out.flow = mapping, n.IsFlowStyle
	out.ends(n.End)
	for _, v := range n.Values {
		p := v.Key.GetToken().Position
		at := place{p.Line, p.Column}
		out.pairs = append(out.pairs, pair{key: v.Key.GetToken().Value, at: at, value: s.node(v.Value, at)})
	}
	if !out.flow && len(out.pairs) > 0 {
		out.at = out.pairs[0].at
	}
}

// null is nothing written, which is put at its key, or the word null or ~.
func (s *source) null(out *node, n *ast.NullNode, key place) {
	out.shape = nothing
	word := n.Token.Value
	if from := s.offset(out.at); strings.HasPrefix(string(s.bytes[from:min(from+len(word), len(s.bytes))]), word) {
		out.text, out.plain = word, true
		return
	}
	out.at = key
}

func (n *node) ends(tk *token.Token) {
	if tk == nil || tk.Position == nil {
		return
	}
	n.end = place{tk.Position.Line, tk.Position.Column}
	if p := before(tk); p != nil {
		n.comma = p.Type == token.CollectEntryType
	}
}

// get is the value of a key, nil where the mapping has none.
func (n *node) get(key string) *node {
	for _, p := range n.pairs {
		if p.key == key {
			return p.value
		}
	}
	return nil
}
