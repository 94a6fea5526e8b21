package main

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"go/parser"
	"go/token"
	"html"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"completion.example/internal/long"
	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	// What the lessons import. They are built by another run of go, which go test
	// doesn't see: without these it would show an old result after a change of theirs.
	_ "completion.example/examples/notebooks/picture"
	_ "completion.example/fluid"
	_ "completion.example/fluid/confined"
	_ "completion.example/hydrostatics"
	_ "completion.example/hydrostatics/unit"
	_ "completion.example/hydrostatics/unit/practice"
	_ "completion.example/packer"
	_ "completion.example/tubular"
	_ "completion.example/tubular/catalogue"
	_ "completion.example/tubular/movement"
	_ "completion.example/valve"
	_ "completion.example/valve/controlline"
	_ "completion.example/valve/production"
	_ "completion.example/valve/production/choke"
	_ "completion.example/valve/production/inflow"
	_ "completion.example/valve/sequence"
	_ "completion.example/valve/sleeve"
)

var update = flag.Bool("update", false, "write the notebooks anew")

// ran runs all lessons, once for all tests.
var ran = sync.OnceValues(func() (map[string]map[int][]Output, error) {
	all, err := readLessons()
	if err != nil {
		return nil, err
	}
	return run(context.Background(), all)
})

// Every lesson is built in a module of its own and run; text and pictures are those
// that are stored.
func TestNotebooksAreWhatTheLessonsPrint(t *testing.T) {
	long.Skip(t, "builds and runs the lessons")
	printed, err := ran()
	require.NoError(t, err)
	stored, err := filepath.Glob("*.ipynb")
	require.NoError(t, err)
	for _, l := range lessons(t) {
		book, err := l.notebook(printed[l.Name])
		require.NoError(t, err)
		name := l.Name + ".ipynb"
		stored = slices.DeleteFunc(stored, func(s string) bool { return s == name })
		if *update {
			require.NoError(t, os.WriteFile(name, book, 0o600))
			continue
		}
		have, err := os.ReadFile(name)
		require.NoError(t, err)
		if d := cmp.Diff(strings.Split(string(have), "\n"), strings.Split(string(book), "\n")); d != "" {
			t.Errorf("%s is not what lessons/%s.md prints (-stored +printed); look at it, then TEST_LONG=1 go test ./examples/notebooks -update:\n%s", name, l.Name, d)
		}
	}
	require.Empty(t, stored, "notebooks without a lesson")
}

// A notebook has what nbformat 4.5 asks for, and a picture.
func TestNotebooksAreValid(t *testing.T) {
	long.Skip(t, "builds and runs the lessons")
	printed, err := ran()
	require.NoError(t, err)
	type cell struct {
		Type     string          `json:"cell_type"`
		ID       string          `json:"id"`
		Metadata json.RawMessage `json:"metadata"`
		Source   []string        `json:"source"`
		Count    *int            `json:"execution_count"`
		Outputs  *[]struct {
			Type     string              `json:"output_type"`
			Name     string              `json:"name"`
			Text     []string            `json:"text"`
			Data     map[string][]string `json:"data"`
			Metadata map[string]any      `json:"metadata"`
		} `json:"outputs"`
	}
	for _, l := range lessons(t) {
		book, err := l.notebook(printed[l.Name])
		require.NoError(t, err)
		d := json.NewDecoder(bytes.NewReader(book))
		d.DisallowUnknownFields()
		var p struct {
			Cells    []cell `json:"cells"`
			Metadata struct {
				Kernel   map[string]string `json:"kernelspec"`
				Language map[string]string `json:"language_info"`
				Title    string            `json:"title"`
			} `json:"metadata"`
			Format int `json:"nbformat"`
			Minor  int `json:"nbformat_minor"`
		}
		require.NoError(t, d.Decode(&p), l.Name)
		require.Equal(t, 4, p.Format)
		require.Equal(t, 5, p.Minor)
		require.NotEmpty(t, p.Metadata.Kernel["name"])
		require.NotEmpty(t, p.Metadata.Kernel["display_name"])
		require.Equal(t, "go", p.Metadata.Language["name"])
		require.Contains(t, strings.Join(p.Cells[0].Source, ""), "-replace=completion.example=", "how to find the library from outside")
		ids, pictures := map[string]bool{}, 0
		for _, c := range p.Cells {
			require.Regexp(t, `^[a-zA-Z0-9_-]{1,64}$`, c.ID)
			require.False(t, ids[c.ID], "%s: two cells %s", l.Name, c.ID)
			ids[c.ID] = true
			require.NotNil(t, c.Metadata)
			for i, line := range c.Source {
				require.Equal(t, i < len(c.Source)-1, strings.HasSuffix(line, "\n"), "%s %s: every line but the last one keeps its end", l.Name, c.ID)
			}
			if c.Type == "markdown" {
				require.Nil(t, c.Outputs)
				require.Nil(t, c.Count)
				continue
			}
			require.Equal(t, "code", c.Type)
			require.NotNil(t, c.Outputs)
			require.NotNil(t, c.Count)
			for _, o := range *c.Outputs {
				switch o.Type {
				case "stream":
					require.Equal(t, "stdout", o.Name)
					require.NotEmpty(t, o.Text)
				case "display_data":
					pictures++
					require.NotNil(t, o.Metadata)
					require.Contains(t, strings.Join(o.Data["image/svg+xml"], ""), "<svg ")
				default:
					t.Errorf("%s %s: output of type %q", l.Name, c.ID, o.Type)
				}
			}
		}
		require.Equal(t, 1, pictures, "%s: one picture", l.Name)
	}
}

// Pages are well-formed, hold what was printed, and reach for nothing outside.
func TestPages(t *testing.T) {
	long.Skip(t, "builds and runs the lessons")
	printed, err := ran()
	require.NoError(t, err)
	all := lessons(t)
	void := regexp.MustCompile(`<!DOCTYPE html>|<meta [^>]*>`)
	outside := regexp.MustCompile(`(?i)(src|href|url)\s*[=(]\s*["']?\s*(https?:)?//`)
	for i, l := range all {
		text, err := webpage(all, i, printed[l.Name])
		require.NoError(t, err, l.Name)
		d := xml.NewDecoder(strings.NewReader(void.ReplaceAllString(text, "")))
		d.Entity = xml.HTMLEntity
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, l.Name)
		}
		require.False(t, outside.MatchString(text), "%s reaches outside", l.Name)
		for _, part := range []string{"<details>", "<math", "<svg "} {
			require.True(t, strings.Contains(text, part), "%s: no %s", l.Name, part)
		}
		for part, what := range map[string]string{"$": "formula", "**": "emphasis"} {
			require.False(t, strings.Contains(text, part), "%s: a %s that wasn't read", l.Name, what)
		}
		for _, outputs := range printed[l.Name] {
			for _, o := range outputs {
				require.True(t, strings.Contains(text, html.EscapeString(strings.TrimSuffix(o.Text, "\n"))), "%s: what is printed isn't there: %s", l.Name, o.Text)
			}
		}
	}
	text, err := index(all)
	require.NoError(t, err)
	for _, l := range all {
		require.True(t, strings.Contains(text, l.Name+".html"), l.Name)
	}
}

// The packages of the lessons are those that this test imports, so that go test
// runs it anew when one of them changes.
func TestImportsAreSeenByGoTest(t *testing.T) {
	own, err := parser.ParseFile(token.NewFileSet(), "run_test.go", nil, parser.ImportsOnly)
	require.NoError(t, err)
	var have []string
	for _, i := range own.Imports {
		if i.Name != nil && i.Name.Name == "_" {
			have = append(have, strings.Trim(i.Path.Value, `"`))
		}
	}
	var want []string
	for _, l := range lessons(t) {
		for _, p := range l.imported() {
			if strings.HasPrefix(p, "completion.example") {
				want = append(want, p)
			}
		}
	}
	slices.Sort(want)
	require.Equal(t, slices.Compact(want), have)
}

// Everything is written, and each program stands by itself: vet finds nothing in
// it, which it does only where it compiles.
func TestProgramsStandByThemselves(t *testing.T) {
	long.Skip(t, "builds sixteen programs")
	dir := t.TempDir()
	var out, errs bytes.Buffer
	require.Zero(t, start([]string{"-o", dir}, &out, &errs), errs.String())
	vet := exec.Command("go", "vet", "./...")
	vet.Dir = filepath.Join(dir, "programs")
	said, err := vet.CombinedOutput()
	require.NoError(t, err, string(said))
	all := lessons(t)
	for _, l := range all {
		require.FileExists(t, filepath.Join(dir, l.Name+".html"))
		have, err := os.ReadFile(l.Name + ".ipynb")
		require.NoError(t, err)
		made, err := os.ReadFile(filepath.Join(dir, l.Name+".ipynb"))
		require.NoError(t, err)
		require.Equal(t, string(have), string(made), l.Name)
	}
	first := exec.Command("go", "run", ".")
	first.Dir = filepath.Join(dir, "programs", all[0].Name)
	said, err = first.CombinedOutput()
	require.NoError(t, err, string(said))
	require.Contains(t, string(said), "picture: columns.svg")
	require.FileExists(t, filepath.Join(first.Dir, "columns.svg"))
}

func TestCommand(t *testing.T) {
	var out, errs bytes.Buffer
	require.Zero(t, start(nil, &out, &errs))
	require.Contains(t, out.String(), " 5. Ratings and the ellipse (2 h)")
	out.Reset()
	require.Zero(t, start([]string{"-json"}, &out, &errs))
	var list []Lesson
	require.NoError(t, json.Unmarshal(out.Bytes(), &list))
	require.Len(t, list, 16)
	require.Empty(t, errs.String())
	require.Equal(t, 2, start([]string{"-colour"}, &out, &errs))
	require.Contains(t, errs.String(), "notebooks -h lists the flags")
}

// The README lists the course as it is.
func TestReadme(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	for _, l := range lessons(t) {
		require.Contains(t, string(text), "| ["+l.Title+"]("+l.Name+".ipynb) | "+l.Hours+" | "+l.Needs+" |")
	}
	numbers := regexp.MustCompile(`\d+`)
	ways := regexp.MustCompile(`(?m)^- \*\*[^*]+\*\*: ([\d, ]+)\.$`).FindAllStringSubmatch(string(text), -1)
	require.Len(t, ways, 2)
	for _, way := range ways {
		taken := numbers.FindAllString(way[1], -1)
		for i, n := range taken {
			at, err := strconv.Atoi(n)
			require.NoError(t, err)
			for _, need := range numbers.FindAllString(lessons(t)[at-1].Needs, -1) {
				require.Contains(t, taken[:i], need, "lesson %s on %q needs lesson %s", n, way[0], need)
			}
		}
	}
}
