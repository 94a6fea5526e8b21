// Package frontpage holds the README to what it shows: its output, its program and
// its table of cases are those of today.
//
//	go test ./internal/frontpage -update
//
// writes the parts between "made" marks anew.
package frontpage
