package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// binary is a test binary of a package that is or imports the changed one.
type binary struct {
	pkg     listed
	path    string
	skip    []string      // tests that fail with the switches in, such as those that count allocations
	took    time.Duration // without a change
	tests   []*test
	without []byte // what is reached before any test
	late    int    // changes noticed by running out of time alone
	only    *regexp.Regexp
}

// bench builds and runs the tests.
type bench struct {
	root, dir string
	written   int            // files
	from      int            // the last switch of the packages before
	run       *regexp.Regexp // tests by name; nil: all
}

// overlay writes the replaced files and returns the path of the overlay.
func (b *bench) overlay(files map[string][]byte) (string, error) {
	replace := map[string]string{}
	for path, text := range files {
		b.written++
		to := filepath.Join(b.dir, fmt.Sprintf("%d-%s", b.written, filepath.Base(path)))
		if err := os.WriteFile(to, text, 0o600); err != nil {
			return "", err
		}
		replace[path] = to
	}
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	path := filepath.Join(b.dir, "overlay.json")
	return path, os.WriteFile(path, text, 0o600)
}

// build compiles the tests of a package; the second result is what the compiler said.
func (b *bench) build(pkg listed, overlay string) (binary, string, error) {
	bin := binary{only: b.run, pkg: pkg, path: filepath.Join(b.dir, strings.ReplaceAll(pkg.ImportPath, "/", "-")+".test")}
	cmd := exec.Command("go", "test", "-c", "-vet=off", "-overlay", overlay, "-o", bin.path, pkg.ImportPath)
	cmd.Dir = b.root
	out, err := cmd.CombinedOutput()
	return bin, string(out), err
}

var failed = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// run runs tests of a binary, all if none is named, with one switch on; it tells whether one failed, what
// was printed, and the processor's time.
func (bin *binary) run(id int, limit time.Duration, reached string, names ...string) (bool, string, time.Duration) {
	ctx, cancel := context.WithTimeout(context.Background(), limit+time.Second)
	defer cancel()
	args := []string{"-test.timeout", limit.String(), "-test.parallel", "1", "-test.failfast"}
	if len(names) > 0 {
		args = append(args, "-test.run", bin.pattern(names))
	}
	// A change that never stops taking memory or time must not take the machine's.
	within := fmt.Sprintf(`ulimit -v 4000000; ulimit -t %d; exec "$0" "$@"`, 1+int(limit.Seconds()/3))
	cmd := exec.CommandContext(ctx, "sh", append([]string{"-c", within, bin.path}, args...)...)
	cmd.Dir = bin.pkg.Dir
	cmd.Env = append(os.Environ(), "MUTANT="+strconv.Itoa(id), "MUTANT_REACHED="+reached, "GOMAXPROCS=1")
	out, err := cmd.CombinedOutput()
	return err != nil, string(out), cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}

// pattern picks tests by name, or parts of the one test that is worth its time.
func (bin *binary) pattern(names []string) string {
	some := "^(" + strings.Join(names, "|") + ")$"
	if whole := worthwhile[bin.pkg.below()]; whole != "" {
		return "^" + whole + "$/" + some
	}
	return some
}

func (bin *binary) says(args ...string) string {
	cmd := exec.Command(bin.path, args...)
	cmd.Dir = bin.pkg.Dir
	out, _ := cmd.Output() // what fails is found later
	return string(out)
}

// ready builds the tests of another package over the switches and maps them.
func (b *bench) ready(pkg listed, overlay string, switches int, of []listed, longest time.Duration) (*binary, error) {
	bin, said, err := b.build(pkg, overlay)
	if err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", pkg.ImportPath, err, said)
	}
	return &bin, bin.ready(b.dir, switches, of, longest)
}

var complaint = regexp.MustCompile(`(?m)^(?:\./)?(\S+\.go):(\d+):`)

// variable is how the compiler speaks of a constant that had better stayed one.
var variable = regexp.MustCompile(`\b(\w+) \((?:variable|untyped|constant)`)

// buildSwitched builds the package's own tests with all its mutations. Rows that
// the compiler complains of are left for later, one by one.
func (b *bench) buildSwitched(s *source) (switchedPackage, binary, string, error) {
	left, constants := map[string]bool{}, map[string]bool{}
	key := func(file string, row int) string { return file + ":" + strconv.Itoa(row) }
	for range 30 {
		p := mutate(s, b.from, func(file string, row int) bool { return left[key(file, row)] }, constants)
		overlay, err := b.overlay(p.files)
		if err != nil {
			return p, binary{}, "", err
		}
		bin, out, err := b.build(s.listed, overlay)
		if err == nil {
			return p, bin, overlay, nil
		}
		before := len(left) + len(constants)
		for _, m := range variable.FindAllStringSubmatch(out, -1) {
			constants[m[1]] = true
		}
		if len(left)+len(constants) > before {
			continue
		}
		for _, m := range complaint.FindAllStringSubmatch(out, -1) {
			row, _ := strconv.Atoi(m[2])
			name := filepath.Base(m[1])
			// the compiler names the overlay's file, 3-name.go
			if _, rest, ok := strings.Cut(name, "-"); ok {
				name = rest
			}
			left[key(name, row)] = true
		}
		if len(left)+len(constants) == before {
			return p, bin, "", fmt.Errorf("%s doesn't build with switches: %w\n%s", s.ImportPath, err, out)
		}
	}
	return switchedPackage{}, binary{}, "", fmt.Errorf("%s: no way found to build it with switches", s.ImportPath)
}

// noticesAlone builds the package's own tests with one mutation and tells whether they build and notice.
func (b *bench) noticesAlone(s *source, m Mutation) (builds, noticed bool, err error) {
	path := filepath.Join(s.Dir, m.File)
	text, err := os.ReadFile(path)
	if err != nil {
		return false, false, err
	}
	overlay, err := b.overlay(map[string][]byte{path: alone(text, m)})
	if err != nil {
		return false, false, err
	}
	bin, _, err := b.build(s.listed, overlay)
	if err != nil {
		return false, false, nil
	}
	bad, _, _ := bin.run(0, 2*time.Minute, "")
	return true, bad, nil
}
