package api

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// refusals are the functions whose text is an error's, by their last name.
var refusals = []string{"Errorf", "New", "NewIn", "fault", "gassy", "fallen", "unpumped", "soft", "unhurried", "noGas", "bad"}

const untestedErrors = "untested-errors.txt"

// refusal is a text that a library package refuses something with.
type refusal struct {
	place, text string
	sentinel    string // variable that holds it, if one does
}

var verb = regexp.MustCompile(`%[-+# 0]*(\[\d\])?(\*|\d+)?(\.\d+)?[a-zA-Z%]`)

// filled is what a test's string has where a format has a verb.
var filled = regexp.MustCompile(`"[^"]*"|[-+0-9.]+( (ft|in|psi|lbf|bbl|m|bar|°F|°C))?`)

// pieces are the texts between the verbs of a format, without those that say nothing by themselves.
func (r refusal) pieces() (list []string) {
	for _, p := range verb.Split(r.text, -1) {
		if p = strings.Trim(p, " ,;:()\"'\n"); strings.Count(p, "")-1 >= 5 && p != "must be" {
			list = append(list, p)
		}
	}
	return list
}

// TestEveryErrorTextIsInATest finds texts of errors in the library's packages that no test, and no
// text that a test is held against, has in it: an error path that no test has seen, or whose words may change
// unnoticed. A text counts as tested where one of the pieces between its verbs stands in a test's string, or a
// test's string of three words or more is part of it; an error that has a name, where a test has its name. What can't be
// reached by a test stands in untested-errors.txt with the reason; -update takes out what is tested or gone.
func TestEveryErrorTextIsInATest(t *testing.T) {
	root := filepath.Join("..", "..")
	var all []refusal
	var texts, literals []string
	names := map[string]bool{}
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == ".git":
			return fs.SkipDir
		case d.IsDir() || strings.HasSuffix(path, "errortext_test.go"):
			return nil
		case strings.HasSuffix(path, "_test.go"):
			found, used := testStrings(t, path)
			literals = append(literals, found...)
			for _, n := range used {
				names[n] = true
			}
		case strings.HasSuffix(path, ".go"):
			if below, _ := filepath.Rel(root, path); isLibrary(below) {
				all = append(all, refusalsIn(t, path, below)...)
			}
		case strings.Contains(path, "testdata"+string(filepath.Separator)):
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			texts = append(texts, string(text))
		}
		return nil
	}))
	require.Greater(t, len(all), 500)
	corpus := strings.Join(literals, "\n") + strings.Join(texts, "\n")
	var long []string
	for _, l := range literals {
		literals = append(literals, filled.Split(l, -1)...)
	}
	for _, l := range literals {
		if strings.Count(strings.TrimSpace(l), " ") >= 2 && len(l) >= 12 && !strings.Contains(l, "must be from") {
			long = append(long, strings.TrimSpace(l))
		}
	}
	excused, met := excuses(t), map[string]bool{}
	var untested []string
	for _, r := range all {
		pieces := r.pieces()
		if len(pieces) == 0 || names[r.sentinel] || slices.ContainsFunc(pieces, func(p string) bool { return strings.Contains(corpus, p) }) ||
			slices.ContainsFunc(long, func(l string) bool {
				return slices.ContainsFunc(pieces, func(p string) bool { return strings.Contains(p, l) })
			}) {
			continue
		}
		if excused[r.text] != "" {
			met[r.text] = true
			continue
		}
		untested = append(untested, fmt.Sprintf("%s: %q", r.place, r.text))
	}
	for _, u := range untested {
		t.Errorf("no test has the words of %s", u)
	}
	if *update {
		kept := ""
		for _, text := range slices.Sorted(maps.Keys(met)) {
			kept += strconv.Quote(text) + "\t" + excused[text] + "\n"
		}
		require.NoError(t, os.WriteFile(untestedErrors, []byte(kept), 0o600))
		return
	}
	for text := range excused {
		if met[text] {
			continue
		}
		t.Errorf("untested-errors.txt excuses %q, which is gone or tested", text)
	}
}

func isLibrary(path string) bool {
	first, _, _ := strings.Cut(filepath.ToSlash(path), "/")
	return slices.Contains([]string{"hydrostatics", "fluid", "tubular", "valve", "packer"}, first) && !strings.Contains(path, "invent")
}

// excuses reads quoted text and reason, a tab between them.
func excuses(t *testing.T) map[string]string {
	data, err := os.ReadFile(untestedErrors)
	require.NoError(t, err)
	list := map[string]string{}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		text, reason, found := strings.Cut(line, "\t")
		require.True(t, found && reason != "", "%q has no reason", line)
		text, err := strconv.Unquote(text)
		require.NoError(t, err, line)
		list[text] = reason
	}
	return list
}

func refusalsIn(t *testing.T, path, below string) (list []refusal) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, nil, 0)
	require.NoError(t, err)
	sentinels := map[ast.Expr]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok {
			for i, x := range v.Values {
				if i < len(v.Names) {
					sentinels[x] = v.Names[i].Name
				}
			}
		}
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		name := ""
		switch f := call.Fun.(type) {
		case *ast.SelectorExpr:
			name = f.Sel.Name
		case *ast.Ident:
			name = f.Name
		}
		if !slices.Contains(refusals, name) {
			return true
		}
		for _, a := range slices.Backward(call.Args) {
			if text, ok := literal(a); ok && strings.Contains(text, " ") {
				list = append(list, refusal{fmt.Sprintf("%s:%d", below, set.Position(a.Pos()).Line), text, sentinels[call]})
				break
			}
		}
		return true
	})
	return list
}

// testStrings are the strings of a test, those of its comments of output, and the names of errors that it has.
func testStrings(t *testing.T, path string) (found, names []string) {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
	require.NoError(t, err)
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BasicLit:
			if text, ok := literal(n); ok {
				found = append(found, text, strings.ReplaceAll(text, `\`, ""))
			}
		case *ast.Ident:
			if strings.HasPrefix(strings.ToLower(n.Name), "err") || strings.HasPrefix(n.Name, "no") {
				names = append(names, n.Name)
			}
		}
		return true
	})
	for _, c := range file.Comments {
		if strings.Contains(c.Text(), "utput:") {
			found = append(found, c.Text())
		}
	}
	return found, names
}

func literal(x ast.Expr) (string, bool) {
	l, ok := x.(*ast.BasicLit)
	if !ok || l.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(l.Value)
	return text, err == nil
}
