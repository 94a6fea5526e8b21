package main

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func lessons(t *testing.T) []Lesson {
	t.Helper()
	all, err := readLessons()
	require.NoError(t, err)
	return all
}

// Every lesson has its parts, in their order.
func TestEveryLessonHasItsParts(t *testing.T) {
	all := lessons(t)
	require.Len(t, all, 16)
	for _, l := range all {
		t.Run(l.Name, func(t *testing.T) {
			require.Regexp(t, `^\d+(\.5)?$`, l.Hours)
			require.Equal(t, Imports, l.Cells[firstCode(l)].Kind, "the import cell comes first")
			var headings []string
			var exercises, mistake, predict string
			folded, answers := 0, false
			for _, c := range l.Cells {
				first := firstLine(c.Source)
				if c.Kind != Text {
					require.Equal(t, answers, c.Folded, "code is folded in the answers, and only there")
					folded += count(c.Folded)
					continue
				}
				if strings.HasPrefix(first, "## ") {
					answers = first == "## Answers"
					if sections[first] != "" {
						headings = append(headings, first)
					}
				}
				switch first {
				case "## Exercises":
					exercises = c.Source
				case "## A usual mistake":
					mistake = "open"
				case "## Predict before you run":
					predict = c.Source
				}
				if mistake == "open" && strings.HasPrefix(first, "**How it is found:**") {
					mistake = "found"
				}
			}
			require.Equal(t, []string{"## What you will be able to do", "## Predict before you run", "## A usual mistake", "## Exercises", "## Answers", "## Sources"}, headings)
			require.Equal(t, "found", mistake, "a mistake is shown, and how it is found is said")
			require.Contains(t, predict, "?")
			require.Equal(t, 1, folded, "one folded cell of answers")
			grades := regexp.MustCompile(`(?m)^\d\. \*\((\w+)\)\*`).FindAllStringSubmatch(exercises, -1)
			require.Len(t, grades, 3)
			require.Equal(t, "easy middle hard", grades[0][1]+" "+grades[1][1]+" "+grades[2][1])
			all := strings.Join(textsOf(l), "\n")
			require.True(t, strings.Contains(all, "**Your prediction.**"), "the question is answered")
			require.True(t, strings.Contains(all, "$"), "a formula")
			require.True(t, strings.Contains(all, "## Sources\n\n- "), "sources are named")
		})
	}
}

func textsOf(l Lesson) (texts []string) {
	for _, c := range l.Cells {
		if c.Kind == Text {
			texts = append(texts, c.Source)
		}
	}
	return texts
}

func firstCode(l Lesson) int {
	return slices.IndexFunc(l.Cells, func(c Cell) bool { return c.Kind != Text })
}

func count(b bool) int {
	if b {
		return 1
	}
	return 0
}

// What is wrong in a lesson's text is said with its place.
func TestFaultsInALesson(t *testing.T) {
	const head = "title: A\ngives: B\nhours: 1\nneeds: C\n\n"
	code := func(s ...string) string { return head + "```go\n" + strings.Join(s, "\n```\n\n```go\n") + "\n```\n" }
	for text, want := range map[string]string{
		"title: A\ncolour: red\n\nText":        `"colour: red" in front of the lesson; must be title, gives, hours or needs`,
		"title: A\n\nText":                     "gives is missing",
		head + "```golang\nx\n```\n":           "must be ```go or ```go folded",
		code("x := 1 +"):                       `code that begins with "x := 1 +"`,
		code("x  := 1\n_ = x"):                 "gofmt would write\nx := 1",
		code("import \"fmt\"\n\nvar x = 1"):    "imports must stand in a cell of their own",
		code("x := 1\n_ = x", "x := 2\n_ = x"): "x is declared in two cells",
		code("x := 1\n_ = x", "y := x\n_ = y"): "x is used in another cell than the one that declares it",
		code("var x = 1", "x := 2\n_ = x"):     "x is declared outside of functions and again",
		code("x := 1\nreturn\n_ = x"):          "a return",
	} {
		_, err := parseLesson("99-x", text)
		require.ErrorContains(t, err, want, text)
		require.ErrorContains(t, err, "lessons/99-x.md", text)
	}
	for _, text := range []string{
		code("var x = 1", "y := x\n_ = y"),
		code("for i := range 3 {\n\t_ = i\n}", "for i := range 3 {\n\t_ = i\n}"),
		code("x := 1\n_ = x", "f := struct{ x int }{x: 2}\n_ = f.x"),
	} {
		_, err := parseLesson("99-x", text)
		require.NoError(t, err, text)
	}
}
