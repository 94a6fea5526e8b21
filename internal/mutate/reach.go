package main

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
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

// ready runs each test on its own without a change: it measures what it takes, sees which switches
// it reaches, and leaves out what the switches break or what takes longer than longest.
func (bin *binary) ready(dir string, switches int, longest time.Duration) error {
	bad, out := bin.run(0, time.Minute, "", "XXX")
	if bad {
		return fmt.Errorf("%s: no test runs:\n%s", bin.pkg.ImportPath, out)
	}
	names := worthwhile[bin.pkg.below()]
	if len(names) == 0 {
		names = bin.names()
	}
	var err error
	if _, bin.without, err = bin.reach(dir, switches, "XXX"); err != nil {
		return err
	}
	for _, name := range names {
		start := time.Now()
		bad, reached, err := bin.reach(dir, switches, name)
		if err != nil {
			return err
		}
		took := time.Since(start)
		if bad || longest > 0 && took > longest {
			bin.skip = append(bin.skip, name)
			continue
		}
		bin.took += took
		bin.tests = append(bin.tests, &test{name, took, reached, map[string]int{}})
	}
	return nil
}

// names lists the tests, examples and fuzz targets.
func (bin *binary) names() []string {
	var names []string
	for _, name := range strings.Fields(bin.list()) {
		if strings.HasPrefix(name, "Test") || strings.HasPrefix(name, "Example") || strings.HasPrefix(name, "Fuzz") {
			names = append(names, name)
		}
	}
	return names
}

// reach runs one test; it tells whether it failed and which switches made a difference in it.
func (bin *binary) reach(dir string, switches int, name string) (bool, []byte, error) {
	path := filepath.Join(dir, "reached")
	if err := os.WriteFile(path, make([]byte, switches+1), 0o600); err != nil {
		return false, nil, err
	}
	bad, _ := bin.run(0, 5*time.Minute, path, name)
	reached, err := os.ReadFile(path)
	return bad, reached, err
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
		return (t.took + 5*time.Millisecond) / time.Duration(1+t.caught[m.File])
	}
	slices.SortStableFunc(ask, func(a, b *test) int { return cmp.Compare(price(a), price(b)) })
	for most := 150 * time.Millisecond; len(ask) > 0; most *= 3 {
		var some []string
		took := time.Duration(0)
		n := 0
		for n < len(ask) && (n == 0 || took+ask[n].took <= most) {
			took += ask[n].took
			some = append(some, ask[n].name)
			n++
		}
		if bad, out := bin.run(m.id, 4*took+3*time.Second, "", some...); bad {
			bin.remember(ask[:n], out, m.File)
			return true
		}
		ask = ask[n:]
	}
	return false
}

func (bin *binary) remember(asked []*test, out, file string) {
	found := failed.FindStringSubmatch(out)
	for _, t := range asked {
		if found != nil && t.name == found[1] {
			t.caught[file]++
		}
	}
	if found == nil && !strings.Contains(out, "panic: ") || strings.Contains(out, "test timed out") {
		bin.late++
	}
}
