package sequence_test

import (
	"os"
	"runtime/debug"
	"testing"
)

// Thousands of walks make much that is soon of no use: with memory looked through less
// often the tests take a fifth less time.
func TestMain(m *testing.M) {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
	os.Exit(m.Run())
}
