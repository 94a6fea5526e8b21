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
// -overlay of the go command; the test binary then runs once for each change.
// Numbers in constant declarations can't be switched and are compiled one by one.
// Own tests run first, then the published cases and the limits on record
// (internal/everyslot), then the packages that import the changed one.
//
// What no test notices is a survivor. Survivors that can't or needn't be killed
// stand in survivors.csv with the reason; any other makes the exit code 1.
package main
