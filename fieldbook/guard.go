package fieldbook

import (
	"bytes"

	"github.com/goccy/go-yaml/token"
)

// level is one block collection that is open at a token.
type level struct {
	column int
	list   bool
	keys   int
}

// guard is the state of the walk over the tokens.
type guard struct {
	faults  Faults
	blocks  []level
	flow    int
	seen    bool // something other than a comment or directive stands before
	ended   bool // a document end stands before
	percent int  // the line of a directive
	second  bool // a second document has been answered
}

// guardTokens looks at the YAML library's tokens, which come in linear time, before its parser
// sees them, which takes quadratic time and memory for deep nesting. As they are the same tokens
// the parser will get, quotes, comments and block texts cannot mislead it.
func guardTokens(tokens token.Tokens) Faults {
	var g guard
	for _, tk := range tokens {
		g.documents(tk)
		g.refused(tk)
		if !g.depth(tk) || len(g.faults) >= mostFaults {
			break
		}
		if tk.Type == token.DirectiveType {
			g.percent = tk.Position.Line
		}
		if tk.Type != token.CommentType && tk.Position.Line != g.percent {
			g.seen = true
		}
	}
	return g.faults
}

func (g *guard) fault(tk *token.Token, code, text, expected string) {
	p := tk.Position
	g.faults = append(g.faults, Fault{Line: max(p.Line, 1), Column: max(p.Column, 1), Code: code, Text: text, Expected: expected})
}

func (g *guard) documents(tk *token.Token) {
	switch {
	case tk.Type == token.CommentType || g.second:
	case tk.Type == token.DocumentEndType && !g.ended:
		g.ended = true
	case tk.Type == token.DocumentHeaderType && g.seen, g.ended:
		g.second = true
		g.fault(tk, "documents", "a second document begins", "one document a file")
	}
}

// refused answers what YAML has and a book has not.
func (g *guard) refused(tk *token.Token) {
	switch tk.Type {
	case token.AnchorType:
		g.fault(tk, "anchor", "an anchor (&)", "the text itself, or quotes round it")
	case token.AliasType:
		g.fault(tk, "alias", "an alias (*)", "the text itself, or quotes round it")
	case token.MergeKeyType:
		g.fault(tk, "merge", "a merge key (<<)", "the keys themselves")
	case token.TagType:
		g.fault(tk, "tag", "a tag (!)", "the text itself, or quotes round it")
	case token.DirectiveType:
		g.fault(tk, "directive", "a directive (%)", "a book without one")
	case token.MappingKeyType:
		g.fault(tk, "complex-key", "a key introduced by a question mark", "key: value")
	}
}

// depth follows nesting and says whether to go on.
func (g *guard) depth(tk *token.Token) bool {
	switch tk.Type {
	case token.MappingStartType, token.SequenceStartType:
		g.flow++
	case token.MappingEndType, token.SequenceEndType:
		g.flow = max(g.flow-1, 0)
	case token.SequenceEntryType:
		if g.flow == 0 {
			g.open(tk.Position.Column, true)
		}
	case token.MappingValueType:
		if key := before(tk); g.flow == 0 && key != nil && g.open(key.Position.Column, false) > mostKeys {
			g.fault(key, "too-many", "more keys in one block than a field book has", "")
			return false
		}
	}
	if g.flow+len(g.blocks) > mostDepth {
		g.fault(tk, "nesting", "nested too deeply", "at most 64 levels")
		return false
	}
	return true
}

// open enters or stays in the block collection at a column and counts its keys.
func (g *guard) open(column int, list bool) int {
	for len(g.blocks) > 0 {
		top := &g.blocks[len(g.blocks)-1]
		if top.column < column || top.column == column && (top.list == list || list) {
			break
		}
		g.blocks = g.blocks[:len(g.blocks)-1]
	}
	if n := len(g.blocks); n > 0 && g.blocks[n-1].column == column && g.blocks[n-1].list == list {
		g.blocks[n-1].keys++
		return g.blocks[n-1].keys
	}
	g.blocks = append(g.blocks, level{column: column, list: list, keys: 1})
	return 1
}

// before is the token before, comments apart.
func before(tk *token.Token) *token.Token {
	for p := tk.Prev; p != nil; p = p.Prev {
		if p.Type != token.CommentType {
			return p
		}
	}
	return nil
}

// syntaxCode tells tabs in the indentation of a line from other faults of syntax.
func syntaxCode(line []byte) string {
	if indent := line[:len(line)-len(bytes.TrimLeft(line, " \t"))]; bytes.IndexByte(indent, '\t') >= 0 {
		return "tab"
	}
	return "syntax"
}
