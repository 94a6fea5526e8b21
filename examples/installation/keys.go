package main

import (
	"fmt"
	"strings"
	"sync"
)

// key is what a key of a plan means.
type key struct {
	required bool
	standard string // what counts where it is left out
	meaning  string
}

// keys are the meanings by "Type.key", and of the types by "Type".
var keys = sync.OnceValues(func() (map[string]key, error) {
	all := map[string]key{}
	for n, line := range strings.Split(keyTable, "\n") {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		parts := strings.SplitN(line, "|", 3)
		if len(parts) != 3 {
			return nil, fmt.Errorf("keys.txt: line %d has no three parts", n+1)
		}
		name := strings.TrimSpace(parts[0])
		if _, twice := all[name]; twice {
			return nil, fmt.Errorf("keys.txt: line %d: %s stands twice", n+1, name)
		}
		standard, required := strings.CutPrefix(strings.TrimSpace(parts[1]), "!")
		all[name] = key{required && standard == "", strings.TrimSpace(standard), strings.TrimSpace(parts[2])}
	}
	return all, nil
})
