package validation_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"completion.example/internal/published"
	"completion.example/internal/validation"
	"github.com/stretchr/testify/require"
)

// TestPublished runs every published case: a case fails alone, by its name.
func TestPublished(t *testing.T) {
	for _, s := range validation.Suites() {
		t.Run(s.File, func(t *testing.T) {
			outcomes, err := s.Run()
			require.NoError(t, err)
			require.NotEmpty(t, outcomes)
			for _, o := range outcomes {
				if !o.OK() {
					t.Error(o.Fault())
				}
			}
		})
	}
}

// TestNoRowTwice finds rows that say the same from one place of a source, in one file or
// two of one capability: they would count twice.
func TestNoRowTwice(t *testing.T) {
	type row struct{ capability, inputs, quantity, printed, where, source string }
	seen := map[row]published.Case{}
	for _, c := range cases(t) {
		r := row{c.Capability, c.Inputs, c.Quantity, c.Printed, c.Where, c.Source}
		if first, twice := seen[r]; twice {
			t.Errorf("%v repeats line %d of %s", c, first.Line, first.File)
		}
		seen[r] = c
	}
}

// TestFiguresAreKnownAgain finds a printed figure that stands behind two capabilities under two ids: it
// would count twice. The same figure has one source, one printed answer and inputs of the same numbers.
func TestFiguresAreKnownAgain(t *testing.T) {
	type figure struct{ printed, numbers, source string }
	seen := map[figure]published.Case{}
	number := regexp.MustCompile(`=[-+0-9.e]+`)
	for _, c := range cases(t) {
		numbers := number.FindAllString(c.Inputs, -1)
		slices.Sort(numbers)
		printed, _, _ := strings.Cut(c.Printed, " ")
		f := figure{printed, strings.Join(numbers, " "), c.Source}
		if first, ok := seen[f]; ok && c.Status.External() && first.Capability != c.Capability && first.ID != c.ID {
			t.Errorf("%v is the figure of %v, with another id", c, first)
		}
		seen[f] = c
	}
}

func TestAFigureOfTwoCapabilitiesCountsOnce(t *testing.T) {
	o := func(id, capability string, s published.Status) validation.Outcome {
		return validation.Outcome{Case: published.Case{ID: id, Capability: capability, Printed: "5 psi", Source: "a book", Status: s}}
	}
	require.Equal(t, 3, validation.Figures([]validation.Outcome{
		o("A", "H1", published.Published), o("A", "H1", published.Published), o("A", "F1", published.Published),
		o("B", "H1", published.ReferenceLibrary), o("C", "H1", published.Memory), o("D", "H1", published.Misprint),
	}))
}

// TestAsides holds the list of what was read and is no case: of a capability that is listed, with a
// reason, and no test is named that isn't there.
func TestAsides(t *testing.T) {
	asides, err := validation.Asides()
	require.NoError(t, err)
	require.NotEmpty(t, asides)
	listed := map[string]bool{}
	for _, c := range validation.Capabilities {
		listed[c.ID] = true
	}
	test := regexp.MustCompile(`in ([a-z/]+), (Test\w+)`)
	for _, a := range asides {
		require.True(t, listed[a.Capability], "%v", a)
		for _, text := range []string{a.ID, a.Quantity, a.Printed, a.Source, a.Why} {
			require.NotEmpty(t, text, "%v", a)
		}
		if named := test.FindStringSubmatch(a.Why); named != nil {
			files, err := filepath.Glob(filepath.Join("..", "..", named[1], "*_test.go"))
			require.NoError(t, err)
			require.True(t, slices.ContainsFunc(files, func(f string) bool {
				text, err := os.ReadFile(f)
				return err == nil && strings.Contains(string(text), "func "+named[2]+"(")
			}), "%v", a)
		}
	}
}

// TestOneSpellingOfASource finds sources that differ by case, punctuation and the
// like alone.
func TestOneSpellingOfASource(t *testing.T) {
	spelt := map[string]string{}
	for _, c := range cases(t) {
		bare := strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) || unicode.IsDigit(r) {
				return unicode.ToLower(r)
			}
			return -1
		}, strings.NewReplacer("&", "and").Replace(c.Source))
		if first, ok := spelt[bare]; ok && first != c.Source {
			t.Errorf("%v: source %q is spelt %q elsewhere", c, c.Source, first)
		}
		spelt[bare] = c.Source
		if strings.Contains(c.Source, "documentation") {
			require.NotEqual(t, published.Published, c.Status, "%v: a library's documentation is a reference library", c)
		}
	}
}

func cases(t *testing.T) (all []published.Case) {
	for _, s := range validation.Suites() {
		c, err := published.Read(s.File)
		require.NoError(t, err)
		all = append(all, c...)
	}
	return all
}

// TestCasesNameCapabilities finds cases of a capability that isn't listed.
func TestCasesNameCapabilities(t *testing.T) {
	listed := map[string]bool{}
	for _, c := range validation.Capabilities {
		require.False(t, listed[c.ID], c.ID)
		listed[c.ID] = true
	}
	for _, c := range cases(t) {
		require.True(t, listed[c.Capability], "%v", c)
	}
}

// TestFault says what a case that fails must say.
func TestFault(t *testing.T) {
	c := published.Case{ID: "A-1", Quantity: "pressure", Inputs: "rho=1 kg/m3", Printed: "5 psi", Source: "a book", Where: "p. 3", Status: published.Published, File: "x.csv", Line: 7}
	met := published.Comparison{Got: 5.1, Want: 5, Tolerance: 0.5, Unit: "psi"}
	missed := published.Comparison{Got: 6, Want: 5, Tolerance: 0.5, Unit: "psi"}
	require.Empty(t, validation.Outcome{Case: c, Comparison: met}.Fault())
	fault := validation.Outcome{Case: c, Comparison: missed}.Fault()
	for _, part := range []string{"x.csv:7", "A-1", "rho=1 kg/m3", "got 6", "want 5 ± 0.5 psi", "off by 1", "a book, p. 3"} {
		require.Contains(t, fault, part)
	}
	fault = validation.Outcome{Case: c, Err: errors.New("boiled dry")}.Fault()
	for _, part := range []string{"rho=1 kg/m3", "want 5 psi", "boiled dry"} {
		require.Contains(t, fault, part)
	}
	c.Status = published.Misprint
	require.Empty(t, validation.Outcome{Case: c, Comparison: missed}.Fault())
	require.Contains(t, validation.Outcome{Case: c, Comparison: met}.Fault(), "is met")
	require.Contains(t, validation.Outcome{Case: c, Err: errors.New("boiled dry")}.Fault(), "boiled dry")
}

// TestEveryFileIsRun finds case files that no suite reads.
func TestEveryFileIsRun(t *testing.T) {
	run := map[string]bool{}
	for _, s := range validation.Suites() {
		run[s.File] = true
	}
	files, err := fs.Glob(os.DirFS(filepath.Join("..", "published")), "*.csv")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		require.True(t, run[f], "%s is in no suite", f)
	}
}
