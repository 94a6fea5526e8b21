package notebooks_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"go/ast"
	"go/doc"
	"go/format"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write code and output of the Examples into the pages")

// page is as much of the notebook format (nbformat 4.5) as our pages use.
type page struct {
	Cells    []cell         `json:"cells"`
	Metadata map[string]any `json:"metadata"`
	Format   int            `json:"nbformat"`
	Minor    int            `json:"nbformat_minor"`
}

type cell struct {
	Type     string            `json:"cell_type"`
	ID       string            `json:"id"`
	Metadata map[string]string `json:"metadata"`
	Source   []string          `json:"source"`
	Count    *int              `json:"execution_count"`
	Outputs  []output          `json:"outputs"`
}

// MarshalJSON leaves out of text cells what the format allows in code cells only.
func (c cell) MarshalJSON() ([]byte, error) {
	type text struct {
		Type     string            `json:"cell_type"`
		ID       string            `json:"id"`
		Metadata map[string]string `json:"metadata"`
		Source   []string          `json:"source"`
	}
	type code cell // without this method
	var v any = code(c)
	if c.Type != "code" {
		v = text{c.Type, c.ID, c.Metadata, c.Source}
	}
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return out.Bytes(), err
}

type output struct {
	Name string   `json:"name"`
	Type string   `json:"output_type"`
	Text []string `json:"text"`
}

// lesson is the Go side of a page: its Examples and declarations by name.
type lesson struct {
	examples     map[string]*doc.Example
	declarations map[string]string
	files        *token.FileSet
}

func readLesson(t *testing.T, file string) lesson {
	t.Helper()
	l := lesson{examples: map[string]*doc.Example{}, declarations: map[string]string{}, files: token.NewFileSet()}
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	parsed, err := parser.ParseFile(l.files, file, source, parser.ParseComments)
	require.NoError(t, err)
	for _, e := range doc.Examples(parsed) {
		l.examples["Example"+e.Name] = e
	}
	for _, d := range parsed.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || strings.HasPrefix(f.Name.Name, "Example") {
			continue
		}
		from := f.Pos()
		if f.Doc != nil {
			from = f.Doc.Pos()
		}
		l.declarations[f.Name.Name] = string(source[l.files.Position(from).Offset:l.files.Position(f.End()).Offset])
	}
	return l
}

// code returns the source and the output that a cell must have.
func (l lesson) code(t *testing.T, c cell) (source, printed string) {
	t.Helper()
	if name := c.Metadata["declaration"]; name != "" {
		require.Contains(t, l.declarations, name)
		return l.declarations[name], ""
	}
	name := c.Metadata["example"]
	require.Contains(t, l.examples, name, "a code cell must name its example or declaration")
	e := l.examples[name]
	require.NotEmpty(t, e.Output, "%s must have an output, or it isn't run", name)
	block, ok := e.Code.(*ast.BlockStmt)
	require.True(t, ok)
	raw, err := os.ReadFile(l.files.Position(block.Pos()).Filename)
	require.NoError(t, err)
	body := string(raw[l.files.Position(block.Lbrace).Offset+1 : l.files.Position(block.Rbrace).Offset])
	body, _, _ = strings.Cut(body, "\t// Output:")
	formatted, err := format.Source([]byte(strings.TrimSpace(body))) // outdents
	require.NoError(t, err)
	return string(formatted), e.Output
}

// lines splits as notebooks do: every line keeps its end.
func lines(s string) []string {
	if s == "" {
		return []string{}
	}
	return strings.SplitAfter(strings.TrimSuffix(s, "\n"), "\n")
}

// TestPages holds every code cell and its output against the Example that was
// compiled and run, and asks that no Example is left off its page.
func TestPages(t *testing.T) {
	pages, err := filepath.Glob("*.ipynb")
	require.NoError(t, err)
	require.Len(t, pages, 3)
	for _, file := range pages {
		t.Run(file, func(t *testing.T) {
			l := readLesson(t, strings.TrimSuffix(file, ".ipynb")+"_test.go")
			raw, err := os.ReadFile(file)
			require.NoError(t, err)
			decoder := json.NewDecoder(bytes.NewReader(raw))
			decoder.DisallowUnknownFields()
			var p page
			require.NoError(t, decoder.Decode(&p))
			require.Equal(t, 4, p.Format)
			seen, ids := map[string]bool{}, map[string]bool{}
			for i := range p.Cells {
				c := &p.Cells[i]
				require.False(t, ids[c.ID] || c.ID == "", "cell %d needs an id of its own", i)
				ids[c.ID] = true
				if c.Type != "code" {
					require.Equal(t, "markdown", c.Type)
					continue
				}
				source, printed := l.code(t, *c)
				seen[c.Metadata["example"]+c.Metadata["declaration"]] = true
				if *update {
					c.Source, c.Outputs = lines(source), []output{}
					if printed != "" {
						c.Outputs = []output{{Name: "stdout", Type: "stream", Text: lines(printed)}}
					}
				}
				if d := cmp.Diff(strings.TrimSuffix(source, "\n"), strings.Join(c.Source, "")); d != "" {
					t.Errorf("cell %q: code is not the example's (-example +page):\n%s", c.ID, d)
				}
				shown := ""
				for _, o := range c.Outputs {
					shown += strings.Join(o.Text, "")
				}
				require.Equal(t, strings.TrimSuffix(printed, "\n"), shown, "cell %q: output", c.ID)
			}
			for name := range l.declarations {
				require.True(t, seen[name], "%s is not on the page", name)
			}
			for name := range l.examples {
				require.True(t, seen[name], "%s is not on the page", name)
			}
			if *update {
				var out bytes.Buffer
				encoder := json.NewEncoder(&out)
				encoder.SetEscapeHTML(false)
				encoder.SetIndent("", " ")
				require.NoError(t, encoder.Encode(p))
				require.NoError(t, os.WriteFile(file, out.Bytes(), 0o644))
			}
		})
	}
}
