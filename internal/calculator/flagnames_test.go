package calculator

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// flagUse is a flag as one calculator has it.
type flagUse struct{ calculator, name, usage string }

// flagUses finds every flag of every calculator in its source.
func flagUses(t *testing.T) []flagUse {
	t.Helper()
	files, err := filepath.Glob("../../examples/*/*.go")
	require.NoError(t, err)
	own, err := filepath.Glob("../../examples/internal/calculators/*/*.go")
	require.NoError(t, err)
	files = append(files, own...)
	var uses []flagUse
	for _, file := range files {
		calculator := filepath.Base(filepath.Dir(file))
		if strings.HasSuffix(file, "_test.go") || calculator == "notebooks" {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		require.NoError(t, err)
		ast.Inspect(parsed, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok {
				if name, usage, ok := flagOf(call); ok {
					uses = append(uses, flagUse{calculator, name, usage})
				}
			}
			return true
		})
	}
	require.Greater(t, len(uses), 300, "the calculators have more flags than that")
	return uses
}

// flagOf reads a call that adds a flag: its name is the first string that stands
// alone, its usage the last argument.
func flagOf(call *ast.CallExpr) (name, usage string, ok bool) {
	f, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return "", "", false
	}
	receiver, _ := f.X.(*ast.Ident)
	switch {
	case receiver == nil:
		return "", "", false
	case receiver.Name == "wellpath" && f.Sel.Name == "Flag":
		return "survey", "CSV of the well's stations", true
	case receiver.Name == "calculator" && f.Sel.Name == "AbsoluteVar":
	case receiver.Name == "flags" && len(call.Args) >= 3 && f.Sel.Name != "Visit":
	default:
		return "", "", false
	}
	for _, a := range call.Args {
		if l, is := a.(*ast.BasicLit); is && l.Kind == token.STRING {
			name, _ = strconv.Unquote(l.Value)
			return name, literals(call.Args[len(call.Args)-1]), true
		}
	}
	return "", "", false
}

// literals joins the strings that an expression is put together from.
func literals(e ast.Expr) string {
	var text strings.Builder
	ast.Inspect(e, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			s, _ := strconv.Unquote(l.Value)
			text.WriteString(s)
		}
		return true
	})
	return text.String()
}

// flagTable reads the table of flag names in DEVELOPERS.md: what each stands for,
// with the words that its usage holds in bold.
func flagTable(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	row := regexp.MustCompile("(?m)^\\| `-([a-z0-9-]+)` \\|(.*)\\|$")
	bold := regexp.MustCompile(`\*\*([^*]+)\*\*`)
	table := map[string]string{}
	for _, m := range row.FindAllStringSubmatch(string(text), -1) {
		words := bold.FindStringSubmatch(m[2])
		require.NotNil(t, words, "-%s has no words in bold", m[1])
		require.NotContains(t, table, m[1], "twice in the table")
		table[m[1]] = words[1]
	}
	require.NotEmpty(t, table)
	return table
}

// One flag name stands for one thing in all calculators.
func TestOneFlagNameForOneThing(t *testing.T) {
	table := flagTable(t)
	users := map[string]map[string]bool{}
	shape := regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	for _, u := range flagUses(t) {
		require.Regexp(t, shape, u.name, u.calculator)
		if u.calculator != "validation" && u.calculator != "installation" { // they have a frame of their own
			require.NotContains(t, []string{"json", "md", "explain", "picture", unitsFlag}, u.name, "%s: the frame has it", u.calculator)
		}
		if users[u.name] == nil {
			users[u.name] = map[string]bool{}
		}
		users[u.name][u.calculator] = true
		if words, ok := table[u.name]; ok && !strings.Contains(strings.ToLower(u.usage), words) {
			t.Errorf("%s -%s says %q; the table of DEVELOPERS.md has it stand for %q", u.calculator, u.name, u.usage, words)
		}
	}
	for name, by := range users {
		if _, ok := table[name]; !ok && len(by) > 1 && name != "json" {
			t.Errorf("-%s is a flag of %v and not in the table of DEVELOPERS.md", name, by)
		}
	}
	for name := range table {
		require.NotEmpty(t, users[name], "-%s is in the table and no flag", name)
	}
}

// A flag that was renamed is gone, and the one it is told to be is there.
func TestRenamedFlags(t *testing.T) {
	has := map[[2]string]bool{}
	for _, u := range flagUses(t) {
		has[[2]string{u.calculator, u.name}] = true
	}
	for calculator, names := range renamed {
		for old, now := range names {
			require.True(t, has[[2]string{calculator, now}], "%s -%s", calculator, now)
			require.False(t, has[[2]string{calculator, old}], "%s -%s", calculator, old)
		}
	}
}
