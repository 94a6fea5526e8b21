//go:build !js

package main

import (
	"os"
	"runtime/debug"
)

// What a walk makes is soon of no use: with memory looked through less often, windows and
// advice take a fifth less time, for some 50 MB. GOGC in the environment says otherwise.
func init() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
}
