package main

import (
	"bytes"
	"cmp"
	"path/filepath"
	"slices"
	"strings"
)

// switchedPackage is a package with every mutation in it.
type switchedPackage struct {
	mutations []Mutation
	files     map[string][]byte // path → text with switches
}

// mutate finds all mutations of a package; its switches are numbered on from from. Rows of which alone says so are
// mutated by compiling them one by one, as are those constants that can't be made
// variables.
func mutate(s *source, from int, alone func(file string, row int) bool, constants map[string]bool) switchedPackage {
	p := switchedPackage{files: map[string][]byte{}}
	variables := s.variables(constants)
	next := from
	for _, f := range s.files {
		path := s.fset.Position(f.Pos()).Filename
		w := &walker{s: s, file: f, text: s.text[f], lines: strings.Split(string(s.text[f]), "\n"), alone: alone, variables: variables, next: &next}
		w.walkFile()
		p.mutations = append(p.mutations, w.found...)
		p.files[path] = apply(w.text, w.edits)
	}
	p.files[filepath.Join(s.Dir, "mutant_switches.go")] = []byte("package " + s.types.Name() + "\n" + runtime)
	return p
}

// apply makes edits, in order of place and at one place closing ones first.
func apply(text []byte, edits []edit) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int {
		closing := func(e edit) int {
			if e.closes {
				return 0
			}
			return 1
		}
		return cmp.Or(cmp.Compare(a.start, b.start), cmp.Compare(closing(a), closing(b)))
	})
	var out bytes.Buffer
	at := 0
	for _, e := range edits {
		out.Write(text[at:e.start])
		out.WriteString(e.text)
		at = e.end
	}
	out.Write(text[at:])
	return out.Bytes()
}

// alone returns the text of a file with one mutation in it.
func alone(text []byte, m Mutation) []byte {
	return apply(text, []edit{{m.start, m.end, false, m.New}})
}
