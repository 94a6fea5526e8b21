package main

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"
)

// processor is the time that the browser's processes have used so far, which a busy
// machine lengthens less than the clock's; zero where there is no /proc.
func (b *chromium) processor() time.Duration {
	type process struct {
		parent int
		ticks  int64
	}
	all := map[int]process{}
	files, _ := filepath.Glob("/proc/[0-9]*/stat")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			continue // it has ended
		}
		id, _ := strconv.Atoi(filepath.Base(filepath.Dir(file)))
		_, rest, _ := strings.Cut(string(text), ") ") // after the name: state, parent, ...
		fields := strings.Fields(rest)
		if len(fields) < 13 {
			continue
		}
		var p process
		p.parent, _ = strconv.Atoi(fields[1])
		user, _ := strconv.ParseInt(fields[11], 10, 64)
		system, _ := strconv.ParseInt(fields[12], 10, 64)
		p.ticks = user + system
		all[id] = p
	}
	var sum int64
	for id, p := range all {
		for up := id; up > 1; up = all[up].parent {
			if up == b.pid {
				sum += p.ticks
				break
			}
		}
	}
	return time.Duration(sum) * time.Second / 100 // USER_HZ is 100 on every Linux that Go runs on
}
