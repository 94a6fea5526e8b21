package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// Every entry of the table still points at a change that can be made, so the
// table shrinks with the code.
func TestSurvivorsStandInTheCode(t *testing.T) {
	known, err := readEmbedded()
	require.NoError(t, err)
	var patterns []string
	for id := range known {
		patterns = append(patterns, "./"+id.pkg)
	}
	if len(patterns) == 0 {
		t.Skip("the table is empty")
	}
	slices.Sort(patterns)
	root, err := moduleRoot()
	require.NoError(t, err)
	sources, err := load(root, slices.Compact(patterns)...)
	require.NoError(t, err)
	there := map[identity]bool{}
	for _, s := range sources {
		for _, m := range mutate(s, 0, nil, nil).mutations {
			there[m.identity()] = true
		}
	}
	for id := range known {
		if !there[id] {
			t.Errorf("survivors.csv: %s/%s has no %q with %s at byte %d in %s any more: take the entry out", id.pkg, id.file, id.line, id.old, id.at, id.decl)
		}
	}
}

// What a switch does is what the same change of the source does: the switched
// program with one switch on prints what the changed source, written here by hand, prints.
func TestSwitchesDoWhatTheyStandFor(t *testing.T) {
	long.Skip(t, "builds programs")
	dir := t.TempDir()
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	write("go.mod", "module sample\n\ngo 1.24\n")
	write("sample.go", sample)
	sources, err := load(dir, ".")
	require.NoError(t, err)
	p := mutate(sources[0], 0, nil, nil)
	for path, text := range p.files {
		require.NoError(t, os.WriteFile(path, text, 0o600))
	}
	bin := filepath.Join(dir, "sample.exe")
	build := exec.Command("go", "build", "-o", bin, ".")
	build.Dir = dir
	out, err := build.CombinedOutput()
	require.NoError(t, err, "%s", out)
	runs := func(id int) string {
		cmd := exec.Command(bin)
		cmd.Env = append(os.Environ(), "MUTANT="+strconv.Itoa(id))
		out, err := cmd.Output()
		require.NoError(t, err)
		return strings.TrimSpace(string(out))
	}
	require.Equal(t, "[7 6 true false true 3 9 4 false -1 12.5]", runs(0))

	want := map[string]string{ // first changed value of the answer
		"a + b*c: + -> -":              "0:-5",
		"a + b*c: * -> /":              "0:1.6666666666666665",
		"2*3.0: 2 -> (2*1.000001)":     "1:6.000006",
		"2*3.0: 3.0 -> (3.0*1.000001)": "1:6.000006",
		"2*3.0: * -> /":                "1:0.6666666666666666",
		"a < b: < -> >=":               "2:false",
		"b < b: < -> <=":               "3:true",
		"b < b: < -> >=":               "3:true",
		"t || f: || -> &&":             "4:false",
		"n + 1: + -> -":                "5:1",
		"n + 1: 1 -> 2":                "5:4",
		"n + 1: 1 -> 0":                "5:2",
		"x += 6: += -> -=":             "6:-3",
		"x += 6: 6 -> (6*1.000001)":    "6:9.000005999999999",
		"k++: ++ -> --":                "7:2",
		"!t: ! ->":                     "8:true",
		"-a: - -> +":                   "9:1",
		"y *= 5: *= -> /=":             "10:0.5",
	}
	tried := 0
	for _, m := range p.mutations {
		for key, w := range want {
			code, change, _ := strings.Cut(key, ": ")
			if !strings.Contains(m.Line, code+", //") && !strings.HasSuffix(m.Line, code) || !strings.HasPrefix(m.Old+" -> "+m.New, change) {
				continue
			}
			tried++
			place, value, _ := strings.Cut(w, ":")
			i, err := strconv.Atoi(place)
			require.NoError(t, err)
			require.NotZero(t, m.id, "%v", m)
			require.Equal(t, value, strings.Fields(strings.Trim(runs(m.id), "[]"))[i], "%v", m)
			for j, v := range strings.Fields(strings.Trim(runs(m.id), "[]")) {
				if j != i {
					require.Equal(t, strings.Fields("7 6 true false true 3 9 4 false -1 12.5")[j], v, "%v changed another answer", m)
				}
			}
		}
	}
	require.Equal(t, len(want), tried)
}

const sample = `package main

import "fmt"

var a, b, c = one(), 2.0, 3.0

func one() float64 { return 1 }

var n, t, f = 2, true, false

func main() {
	x := 3.0
	x += 6
	k := n
	k = k + n - 1
	k++
	y := 2.5
	y *= 5
	answers := []any{
		a + b*c, //
		2*3.0, //
		a < b, //
		b < b, //
		t || f, //
		n + 1, //
		x,
		k,
		!t, //
		-a, //
		y,
	}
	fmt.Println(answers)
}
`

// A sample is the same for the same seed and another for another.
func TestSampleIsRepeatable(t *testing.T) {
	var all []Mutation
	for i := range 100 {
		all = append(all, Mutation{File: strconv.Itoa(i)})
	}
	first := request{sample: 10, seed: 7}.chosen(all, nil)
	require.Len(t, first, 10)
	require.Equal(t, first, request{sample: 10, seed: 7}.chosen(all, nil))
	require.NotEqual(t, first, request{sample: 10, seed: 8}.chosen(all, nil))
	require.Len(t, request{}.chosen(all, nil), 100)
}

func TestCommandLine(t *testing.T) {
	long.Skip(t, "builds tests")
	var out, faults bytes.Buffer
	require.Equal(t, 2, run(nil, &out, &faults))
	require.Contains(t, faults.String(), "name a -package")
	out.Reset()
	require.Equal(t, 0, run([]string{"-list", "-package", "internal/root"}, &out, &faults))
	require.Contains(t, out.String(), "internal/root/")
	require.Equal(t, 1, run([]string{"-package", "nowhere"}, &out, &faults))
}

// Those that are always asked come first; those below a tree that is left out aren't
// asked at all.
func TestUsersAsked(t *testing.T) {
	module := &struct{ Path, Dir string }{Path: "m"}
	pkg := func(name string, imports ...string) listed {
		return listed{ImportPath: "m/" + name, Module: module, TestGoFiles: []string{"a_test.go"}, Imports: imports}
	}
	leaf := pkg("leaf")
	all := []listed{leaf, pkg("user", "m/leaf"), pkg("stranger"), pkg("tree/a/b", "m/leaf"), pkg("treehouse", "m/leaf"), pkg("examples/x", "m/leaf"),
		pkg("internal/everyslot"), pkg("internal/validation")}
	var names []string
	for _, l := range users(leaf, all, []string{"tree", ""}) {
		names = append(names, l.below())
	}
	require.Equal(t, []string{"internal/everyslot", "internal/validation", "user", "treehouse"}, names)
}
