// Mutate changes one number or operator of a library package at a time and
// asks the tests whether they notice.
//
//	go run ./internal/mutate -package fluid/flow
//
// The changes:
//
//	literal   a literal of a floating-point type, times 1 + 1e-6
//	count     a literal of an integer type, plus and minus one
//	operator  + for -, * for /, && for ||, a comparison, a sign or a ! turned round
//	limit     < for <=, > for >=, and back
//
// A package is built once with every change in it behind a switch, through the
// -overlay of the go command; constants that could as well be variables are made
// that. Each test then runs once without a change, to see which switches it comes
// by with a difference (a limit matters where both sides are equal), and each
// change is tried by those tests alone, the quick ones first. What is made before
// any test, such as a table, is tried by all. Own tests come first, then the
// published cases, file by file, and the limits on record (internal/everyslot),
// then the packages that import the changed one. Constants that must be constants
// are compiled one by one, for the package's own tests. Needs Linux.
//
// Two figures that are worked out are equal to the last bit only by chance, and
// mostly both sides of such a limit then give the same: a change of it that no test
// notices needs no reason of its own, and is counted apart ("between two figures").
// A limit against a number that is written down does, and permitted ranges are
// tested on both of their ends.
//
// What no test notices is a survivor. Survivors that can't or needn't be killed
// stand in survivors.csv with the reason; any other makes the exit code 1.
package main
