package calculators_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"completion.example/examples/internal/calculators"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Every calculator is listed, has a package here and a command in examples, and
// stands in README.
func TestAllAreListed(t *testing.T) {
	folders, err := filepath.Glob("*/command.go")
	require.NoError(t, err)
	readme, err := os.ReadFile("../../../README.md")
	require.NoError(t, err)
	var listed, there []string
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			listed = append(listed, c.Name)
			require.Contains(t, string(readme), "`"+c.Name+"`", "README lists the calculators")
			require.FileExists(t, filepath.Join("..", "..", c.Name, c.Name+".go"))
			found, ok := calculators.Named(c.Name)
			require.True(t, ok)
			require.Equal(t, c.Question, found.Question)
			require.True(t, strings.HasSuffix(c.Question, "?"), c.Name)
		}
	}
	for _, f := range folders {
		there = append(there, filepath.Dir(f))
	}
	slices.Sort(listed)
	require.Equal(t, there, listed)
	_, ok := calculators.Named("nonsense")
	require.False(t, ok)
}

// What asks for a depth or for a length along the hole takes the well's survey, or stands
// here with the reason.
func TestDepthsTakeASurvey(t *testing.T) {
	without := map[string]string{
		"friction": "a loss per measured length; no depth plays a part",
		"capacity": "a volume per measured length; no depth plays a part",
	}
	deep := regexp.MustCompile(`\bdepths?\b|along the hole|\bmeasured length\b|\bthe string from the top\b|^length$`)
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			flags := flag.NewFlagSet(c.Name, flag.ContinueOnError)
			c.Setup(flags)
			asks := ""
			flags.VisitAll(func(f *flag.Flag) {
				if f.Name != "survey" && deep.MatchString(f.Usage) {
					asks = f.Name
				}
			})
			takes := flags.Lookup("survey") != nil
			_, excused := without[c.Name]
			switch {
			case excused:
				require.True(t, asks != "" && !takes, "%s needs no excuse", c.Name)
			case takes:
				require.NotEmpty(t, asks, "%s takes a survey and asks for no depth", c.Name)
			default:
				require.Empty(t, asks, "%s asks for -%s and takes no -survey", c.Name, asks)
			}
			delete(without, c.Name)
		}
	}
	require.Empty(t, without)
}

// The defaults of the pipes and wells are those of completions: tubing of its sizes, in
// casing, and no drill pipe, collar or plumber's pipe.
func TestDefaultsAreOfCompletions(t *testing.T) {
	tubing := []unit.Length{2.375 * unit.Inch, 2.875 * unit.Inch, 3.5 * unit.Inch, 4.5 * unit.Inch, 5.5 * unit.Inch, 0.25 * unit.Inch} // API 5CT tubing, from memory; control line
	densities := map[string]bool{"annulus-fluid": true, "tubing-fluid": true, "tubing-fluid-before": true, "annulus-fluid-before": true, "landed": true}
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			flags := flag.NewFlagSet(c.Name, flag.ContinueOnError)
			c.Setup(flags)
			flags.VisitAll(func(f *flag.Flag) {
				var l unit.Length
				var d unit.Density
				switch {
				case f.Name == "od":
					require.NoError(t, l.UnmarshalText([]byte(f.DefValue)))
					require.Contains(t, tubing, l, "%s -od", c.Name)
				case densities[f.Name]:
					require.NoError(t, d.UnmarshalText([]byte(f.DefValue)))
					require.GreaterOrEqual(t, float64(d), float64(8.34*unit.PoundPerGallon), "%s -%s: a well is completed in brine", c.Name, f.Name)
					require.LessOrEqual(t, float64(d), float64(12*unit.PoundPerGallon), "%s -%s", c.Name, f.Name)
				}
			})
		}
	}
}

// A flag has one kind of value in all calculators that have it: one name doesn't stand for
// a pressure here and for a depth there.
func TestOneKindOfValueForOneFlag(t *testing.T) {
	kinds, first := map[string]string{}, map[string]string{}
	shared := 0
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			flags := flag.NewFlagSet(c.Name, flag.ContinueOnError)
			c.Setup(flags)
			flags.VisitAll(func(f *flag.Flag) {
				kind := fmt.Sprintf("%T", f.Value)
				if g, ok := f.Value.(flag.Getter); ok {
					kind = fmt.Sprintf("%T", g.Get())
				}
				if was, ok := kinds[f.Name]; ok {
					shared++
					require.Equal(t, was, kind, "-%s of %s and of %s", f.Name, first[f.Name], c.Name)
					return
				}
				kinds[f.Name], first[f.Name] = kind, c.Name
			})
		}
	}
	require.Greater(t, shared, 150)
}

// Where people would rather look there is a picture, drawn with the defaults; and the
// calculators that were asked for by name are there.
func TestPicturesWherePeopleLook(t *testing.T) {
	for _, name := range []string{"column", "utube", "gascolumn", "setting", "seals", "pins", "release", "circulation", "commingle"} {
		c, ok := calculators.Named(name)
		require.True(t, ok, name)
		require.Contains(t, c.Sheet(nil).Picture, "<svg", name)
	}
	for _, name := range []string{"bullhead", "kill", "surge", "gaswell", "convert"} {
		c, ok := calculators.Named(name)
		require.True(t, ok, name)
		require.Empty(t, c.Sheet(nil).Faults, name)
	}
}
