package api

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// parts of a formula's doc, and how each is recognised. An equation is an indented
// line, or stands in the sentence of a formula that everyone knows by heart.
var parts = []struct {
	name string
	said *regexp.Regexp
}{
	{"equation", regexp.MustCompile(`(?m)^\t\S|[=·√Σ∫∂π²]|\w/\(?\w| × |turned round|[Ii]nverse of [A-Z]|with its slope|[Ss]um of|[Pp]roduct of|straight line`)},
	{"source", regexp.MustCompile(`Source:|Source of|[Ii]nverse of [A-Z]|turned round|the other way round|of the same formula|[Ss]ee [A-Za-z.]*[A-Z]\w+|with its slope`)},
}

// errorsSaid is how the doc of what may return one says when: there, or for all methods
// of a type, such as a fluid's range, in the type's.
var errorsSaid = regexp.MustCompile(`\b[Ee]rrors?\b|\bErr[A-Z]\w+|\w+Error\b|the other way round`)

func TestEveryCalculationThatMayFailSaysWhen(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	said := 0
	for _, p := range packages {
		if strings.HasSuffix(p.name(), "test") {
			continue
		}
		docs, types, fails := docsOf(p), docsOfTypes(p), failing(p)
		for _, c := range calculations(p) {
			if !fails[c] {
				continue
			}
			of, _, _ := strings.Cut(c, ".")
			if !errorsSaid.MatchString(docs[c] + types[of]) {
				t.Errorf("%s: neither the doc of %s nor its type's says when it returns an error", p.Path, c)
			}
			said++
		}
	}
	require.Greater(t, said, 120, "the search for calculations has gone blind")
}

// withFormulas are the packages whose calculations are formulas of a source, or their own.
func withFormulas(t *testing.T) []source {
	packages, err := public(root)
	require.NoError(t, err)
	return slices.DeleteFunc(slices.Clone(packages), func(p source) bool {
		return strings.HasSuffix(p.name(), "test") || strings.HasPrefix(p.Path, "hydrostatics/unit")
	})
}

// rangeSaid is how the doc of a closed formula, which returns no error, says what may
// go in and what comes out beyond: as a rule in a sentence that begins with Range.
var rangeSaid = regexp.MustCompile(`\bRange:|\bNaN\b|[Ii]nfinite|\+Inf\b|\b[Vv]alid (?:for|while|where|below)\b|(?:isn't|not) zero\b`)

// Every closed formula that takes a number says its range. What has no arguments but
// its receiver may say it in the type's doc.
func TestEveryClosedFormulaSaysItsRange(t *testing.T) {
	said := 0
	for _, p := range withFormulas(t) {
		docs, types, fails, takes := docsOf(p), docsOfTypes(p), failing(p), taking(p)
		for _, c := range calculations(p) {
			of, _, method := strings.Cut(c, ".")
			if fails[c] || !method && !takes[c] { // such as Steel: it has nothing to go by
				continue
			}
			doc := docs[c]
			if !takes[c] {
				doc += types[of]
			}
			if !rangeSaid.MatchString(doc) {
				t.Errorf("%s: the doc of %s doesn't say its range, and what comes out beyond it", p.Path, c)
			}
			said++
		}
	}
	require.Greater(t, said, 220, "the search for calculations has gone blind")
}

// Every exported calculation says its equation and whose it is, or names the formula
// that it turns round. Units are those of its arguments' types. Of package unit and
// those below it the conversions are left out: they follow from the definitions in the
// package's doc, and GNU units checks them.
func TestEveryCalculationSaysItsEquationAndSource(t *testing.T) {
	said := 0
	for _, p := range withFormulas(t) {
		docs := docsOf(p)
		for _, c := range calculations(p) {
			for _, part := range parts {
				if !part.said.MatchString(docs[c]) {
					t.Errorf("%s: the doc of %s has no %s", p.Path, c, part.name)
				}
			}
			said++
		}
	}
	require.Greater(t, said, 350, "the search for calculations has gone blind")
}

func TestWhatCountsAsSaid(t *testing.T) {
	for doc, want := range map[string][2]bool{
		"Area returns what it returns.":                               {false, false},
		"Area returns the area.\n\n\tA = π/4·d²\n\nSource: geometry.": {true, true},
		"Area is π/4·d².":                                             {true, false},
		"Diameter is the inverse of Area.":                            {true, true},
		"Area returns the area. Source: geometry.":                    {false, true},
	} {
		require.False(t, rangeSaid.MatchString(doc), doc)
		for i, part := range parts {
			require.Equal(t, want[i], part.said.MatchString(doc), "%s: %s", part.name, doc)
		}
	}
	for _, doc := range []string{"Range: 0 < ID < OD.", "It is NaN below zero.", "Valid while the wall doesn't yield.", "h is not zero."} {
		require.True(t, rangeSaid.MatchString(doc), doc)
	}
	for _, doc := range []string{"It returns the range of depths.", "A valid pipe.", "Zero is smooth."} {
		require.False(t, rangeSaid.MatchString(doc), doc)
	}
}
