// Package long tells tests how much to do. Every run of go test takes little of what takes
// long; with TEST_LONG=1 in the environment, as .ci/run has it, everything is done.
package long

import (
	"os"
	"testing"
)

// Wanted tells whether tests that take long are to run: with TEST_LONG=1, and where
// SEQUENCE_PLANS asks for more random plans than that.
func Wanted() bool { return os.Getenv("TEST_LONG") != "" || os.Getenv("SEQUENCE_PLANS") != "" }

// Skip leaves out a test that takes long, for what it says.
func Skip(t testing.TB, why string) {
	t.Helper()
	if !Wanted() {
		t.Skipf("%s: runs with TEST_LONG=1", why)
	}
}

// Size is how much a test does: few in every run, all with TEST_LONG=1.
func Size(few, all int) int {
	if Wanted() {
		return all
	}
	return few
}
