package frontpage

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"completion.example/internal/published"
	"completion.example/internal/validation"
	"github.com/stretchr/testify/require"
)

const root = "../.."

var update = flag.Bool("update", false, "write the made parts of the README anew")

// TestMadeParts holds what stands between <!-- made: NAME --> and <!-- end --> to
// what is made today.
func TestMadeParts(t *testing.T) {
	name := filepath.Join(root, "README.md")
	data, err := os.ReadFile(name)
	require.NoError(t, err)
	made := map[string]func(t *testing.T) string{"demo": demo, "cases": cases}
	part := regexp.MustCompile(`(?s)(<!-- made: (\w+) -->\n)(.*?)(<!-- end -->)`)
	seen := 0
	text := part.ReplaceAllStringFunc(string(data), func(old string) string {
		m := part.FindStringSubmatch(old)
		make, ok := made[m[2]]
		require.True(t, ok, "nothing makes %q", m[2])
		seen++
		return m[1] + make(t) + m[4]
	})
	require.Equal(t, len(made), seen)
	if *update {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644)) //nolint:gosec // it is for everybody to read
		return
	}
	require.Equal(t, string(data), text, "the README isn't current: go test ./internal/frontpage -update")
}

// demo is ten lines of the demo's output, from the golden text that the demo's own
// test holds it to.
func demo(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(root, "examples/installation/testdata/demo.golden"))
	require.NoError(t, err)
	var lines []string
	take := func(from string, n int) {
		for i, line := range strings.Split(string(data), "\n") {
			if strings.HasPrefix(line, from) {
				lines = append(lines, strings.Split(string(data), "\n")[i:i+n]...)
				return
			}
		}
		require.Fail(t, "the demo doesn't say "+from)
	}
	take("PROVED", 2)
	take("Tightest", 4)
	take(" 4  close sleeve A", 1)
	take("    window     hold close line", 3)
	require.Len(t, lines, 10)
	for i := range lines {
		lines[i] = strings.TrimRight("    "+lines[i], " ")
	}
	return "\n" + strings.Join(lines, "\n") + "\n\n"
}

// cases are the cases of each capability that come from outside.
func cases(t *testing.T) string {
	t.Helper()
	type row struct {
		published, library, missed int
		sources                    map[string]bool
	}
	rows := map[string]*row{}
	for _, s := range validation.Suites() {
		outcomes, err := s.Run()
		require.NoError(t, err)
		for _, o := range outcomes {
			if o.Status != published.Published && o.Status != published.ReferenceLibrary {
				continue
			}
			r := rows[o.Capability]
			if r == nil {
				r = &row{sources: map[string]bool{}}
				rows[o.Capability] = r
			}
			r.sources[o.Source] = true
			if o.Status == published.Published {
				r.published++
			} else {
				r.library++
			}
			if !o.OK() {
				r.missed++
			}
		}
	}
	b := new(strings.Builder)
	b.WriteString("\n| capability | published cases | of a reference library | sources | missed |\n|---|---|---|---|---|\n")
	var none []string
	for _, c := range validation.Capabilities {
		r := rows[c.ID]
		if r == nil {
			none = append(none, c.Name)
			continue
		}
		fmt.Fprintf(b, "| %s | %d | %d | %d | %d |\n", c.Name, r.published, r.library, len(r.sources), r.missed)
	}
	fmt.Fprintf(b, "\nWithout a case from outside: %s.\n\n", strings.Join(none, "; "))
	return b.String()
}

// TestProgram runs the program of the README in a module of its own, as a reader
// would: what it prints is what stands below it.
func TestProgram(t *testing.T) {
	tool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command here")
	}
	data, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	m := regexp.MustCompile("```go\n(package main(?s:.*?))```\n\n((?:    .*\n)+)").FindStringSubmatch(string(data))
	require.NotNil(t, m, "the README has no program with its output")
	here, err := filepath.Abs(root)
	require.NoError(t, err)
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	require.NoError(t, err)
	dir := t.TempDir()
	for name, text := range map[string]string{
		"main.go": m[1],
		"go.sum":  string(sums),
		"go.mod":  "module my.example/wells\n\ngo 1.26\n\nrequire completion.example v0.0.0\n\nreplace completion.example => " + here + "\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	run := exec.CommandContext(t.Context(), tool, "run", ".")
	run.Dir = dir
	run.Env = append(os.Environ(), "GOFLAGS=-mod=mod -trimpath", "GOPROXY=off", "GOOS="+runtime.GOOS, "GOARCH="+runtime.GOARCH)
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out)
	var want []string
	for _, line := range strings.Split(strings.TrimRight(m[2], "\n"), "\n") {
		want = append(want, strings.TrimPrefix(line, "    "))
	}
	require.ElementsMatch(t, want, strings.Split(strings.TrimRight(string(out), "\n"), "\n"))
}

// TestLinks wants every file that the README points to.
func TestLinks(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	found := 0
	for _, m := range regexp.MustCompile(`\]\(([^)#:" ]+)\)|\x60((?:examples|internal)/[\w./-]+\.\w+)\x60`).FindAllStringSubmatch(string(data), -1) {
		file := m[1] + m[2]
		_, err := os.Stat(filepath.Join(root, file))
		require.NoError(t, err, "the README points to %s", file)
		found++
	}
	require.Positive(t, found)
}
