package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Kind is what is changed.
type Kind string

// The kinds.
const (
	Literal  Kind = "literal"
	Count    Kind = "count"
	Operator Kind = "operator"
	Limit    Kind = "limit"
)

// Kinds lists all, in the order of the figures.
var Kinds = []Kind{Literal, Count, Operator, Limit}

// Mutation is one change of one token. What identifies it is the text it stands
// in, so that it survives edits of the lines around it.
type Mutation struct {
	Package string // import path below the module
	File    string
	Decl    string // enclosing function, method, variable or constant
	Line    string // source line, trimmed
	At      int    // byte of the token in that line, from 0
	Kind    Kind
	Figures bool // a limit between two figures that are worked out: see doc.go
	Old     string
	New     string

	id         int // of the switch; 0 is compiled alone
	start, end int // bytes of the token in the file
	row        int // line of the file
}

// identity is what a table's entry and a change of the source have in common.
type identity struct {
	pkg, file, decl, line string
	at                    int
	old, new              string
}

func (m Mutation) identity() identity {
	return identity{m.Package, m.File, m.Decl, m.Line, m.At, m.Old, m.New}
}

func (m Mutation) String() string {
	return fmt.Sprintf("%s/%s:%d %s: %s -> %s in %q", m.Package, m.File, m.row, m.Decl, m.Old, m.New, m.Line)
}

// scaled returns a literal times 1 + 1e-6, or "" where nothing would change.
func scaled(literal string) string {
	v, err := strconv.ParseFloat(strings.ReplaceAll(literal, "_", ""), 64)
	if err != nil || v == 0 || math.IsInf(v, 0) {
		return ""
	}
	return "(" + literal + "*1.000001)"
}

// neighbours returns a count plus and minus one.
func neighbours(literal string, unsigned bool) []string {
	n, err := strconv.ParseInt(literal, 0, 64)
	if err != nil || n == math.MaxInt64 {
		return nil
	}
	if n == 0 && unsigned {
		return []string{"1"}
	}
	minus := strconv.FormatInt(n-1, 10)
	if n == 0 {
		minus = "(-1)"
	}
	return []string{strconv.FormatInt(n+1, 10), minus}
}
