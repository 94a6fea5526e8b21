// Package judge holds a well against its limits: each is a named margin, a number
// that must not be negative, at a place and a moment. It has no words: what a
// margin means to a person is said where the programme is written.
//
// There is one judge. Findings, windows, draws and the margins of a programme are
// what it kept.
package judge
