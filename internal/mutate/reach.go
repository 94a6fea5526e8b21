package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// test is one test of a binary, and which switches it comes by.
type test struct {
	name    string
	took    time.Duration
	reached []byte
	caught  map[string]int // changes noticed, by file
}

// ready runs each test on its own without a change: it measures the processor's time, sees which switches
// it reaches, and leaves out what the switches break or what takes longer than longest.
func (bin *binary) ready(dir string, switches int, of []listed, longest time.Duration) error {
	limit := 5 * time.Minute
	if longest > 0 {
		limit = min(limit, 3*longest+2*time.Second)
	}
	bad, without, alone, err := bin.reach(dir, switches, limit, "XXX")
	if err != nil {
		return err
	}
	if bad {
		return fmt.Errorf("%s: no test runs", bin.pkg.ImportPath)
	}
	bin.without = without
	for _, name := range bin.names(of) {
		bad, reached, took, err := bin.reach(dir, switches, limit, name)
		if err != nil {
			return err
		}
		took = max(0, took-alone)
		if bad || longest > 0 && took > longest {
			bin.skip = append(bin.skip, name)
			continue
		}
		bin.took += took
		bin.tests = append(bin.tests, &test{name, took, reached, map[string]int{}})
	}
	return nil
}

var part = regexp.MustCompile(`(?m)^=== RUN +[^/\s]+/(\S+)`)

// names lists the tests, examples and fuzz targets; of the limits on record those of the changed
// packages, of the published cases each file.
func (bin *binary) names(of []listed) []string {
	var names []string
	whole := worthwhile[bin.pkg.below()]
	if whole == "" {
		for _, name := range strings.Fields(bin.says("-test.list", ".")) {
			if bin.only != nil && !bin.only.MatchString(name) {
				continue
			}
			if strings.HasPrefix(name, "Test") || strings.HasPrefix(name, "Example") || strings.HasPrefix(name, "Fuzz") {
				names = append(names, name)
			}
		}
		return names
	}
	mine := map[string]bool{}
	for _, l := range of {
		mine[strings.ReplaceAll(l.below(), "/", "-")] = true
	}
	for _, m := range part.FindAllStringSubmatch(bin.says("-test.v", "-test.run", "^"+whole+"$"), -1) {
		if bin.pkg.below() != "internal/everyslot" || mine[m[1]] {
			names = append(names, m[1])
		}
	}
	return names
}

// reach runs one test; it tells whether it failed and which switches made a difference in it.
func (bin *binary) reach(dir string, switches int, limit time.Duration, name string) (bool, []byte, time.Duration, error) {
	path := filepath.Join(dir, "reached")
	if err := os.WriteFile(path, make([]byte, switches+1), 0o600); err != nil {
		return false, nil, 0, err
	}
	bad, _, took := bin.run(0, limit, path, name)
	reached, err := os.ReadFile(path)
	return bad, reached, took, err
}

// reaches tells whether a test may notice a change: it comes by it, or the change is in what is
// made before any test.
func (bin *binary) reaches(t *test, id int) bool { return t.reached[id] != 0 || bin.without[id] != 0 }

// notices tells whether the tests notice a switched mutation. The quick ones go first, and those
// that noticed others of the file.
func (bin *binary) notices(m Mutation) bool {
	var ask []*test
	for _, t := range bin.tests {
		if bin.reaches(t, m.id) {
			ask = append(ask, t)
		}
	}
	price := func(t *test) time.Duration {
		return (t.took + 2*time.Millisecond) / time.Duration(1+t.caught[m.File])
	}
	slices.SortStableFunc(ask, func(a, b *test) int { return cmp.Compare(price(a), price(b)) })
	for most := 50 * time.Millisecond; len(ask) > 0; most *= 4 {
		var some []string
		took := time.Duration(0)
		n := 0
		for n < len(ask) && (n == 0 || took+ask[n].took <= most) {
			took += ask[n].took
			some = append(some, ask[n].name)
			n++
		}
		if bad, out, _ := bin.run(m.id, 12*took+4*time.Second, "", some...); bad {
			bin.remember(ask[:n], out, m.File)
			return true
		}
		ask = ask[n:]
	}
	return false
}

func (bin *binary) remember(asked []*test, out, file string) {
	found := failed.FindAllStringSubmatch(out, -1)
	for _, m := range found {
		first, second, _ := strings.Cut(m[1], "/")
		for _, t := range asked {
			if t.name == first || t.name == second {
				t.caught[file]++
			}
		}
	}
	if found == nil && !strings.Contains(out, "panic: ") || strings.Contains(out, "test timed out") {
		bin.late++
	}
}
