package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"regexp"
	"strings"
)

//go:embed lessons/*.md
var texts embed.FS

// Lesson is one lesson as it is written: text and code in reading order.
type Lesson struct {
	Number int    `json:"number"`
	Name   string `json:"name"` // of its files
	Title  string `json:"title"`
	Gives  string `json:"gives"` // in a line
	Hours  string `json:"hours"`
	Needs  string `json:"needs"`
	Cells  []Cell `json:"-"`
}

// Cell is a text or a piece of code. Folded code is shown on asking only.
type Cell struct {
	Kind   Kind
	Folded bool
	Source string
}

// readLessons reads all lessons in the order of the course.
func readLessons() ([]Lesson, error) {
	files, err := fs.Glob(texts, "lessons/*.md")
	if err != nil {
		return nil, err
	}
	var all []Lesson
	var errs []error
	for i, file := range files {
		text, err := fs.ReadFile(texts, file)
		if err != nil {
			return nil, err
		}
		name := strings.TrimSuffix(strings.TrimPrefix(file, "lessons/"), ".md")
		l, err := parseLesson(name, string(text))
		if err == nil && !strings.HasPrefix(name, fmt.Sprintf("%02d-", i+1)) {
			err = fmt.Errorf("%s is lesson %d by its place; its name must begin with %02d-", file, i+1, i+1)
		}
		l.Number = i + 1
		all, errs = append(all, l), append(errs, err)
	}
	return all, errors.Join(errs...)
}

var header = regexp.MustCompile(`^(title|gives|hours|needs): (.+)$`)

// parseLesson reads a text: lines of what it is, then the lesson, in which code
// stands between ```go, or ```go folded, and ```.
func parseLesson(name, text string) (Lesson, error) {
	l := Lesson{Name: name}
	head, body, _ := strings.Cut(text, "\n\n")
	into := map[string]*string{"title": &l.Title, "gives": &l.Gives, "hours": &l.Hours, "needs": &l.Needs}
	for line := range strings.Lines(head) {
		m := header.FindStringSubmatch(strings.TrimSpace(line))
		if m == nil {
			return l, fmt.Errorf("lessons/%s.md: %q in front of the lesson; must be title, gives, hours or needs, a colon and a text", name, strings.TrimSpace(line))
		}
		*into[m[1]] = m[2]
	}
	for _, what := range []string{"title", "gives", "hours", "needs"} {
		if *into[what] == "" {
			return l, fmt.Errorf("lessons/%s.md: %s is missing in front of the lesson", name, what)
		}
	}
	var errs []error
	var prose []string
	flush := func() {
		if s := strings.TrimSpace(strings.Join(prose, "\n")); s != "" {
			l.Cells = append(l.Cells, Cell{Kind: Text, Source: s})
		}
		prose = nil
	}
	lines := strings.Split(body, "\n")
	for i := 0; i < len(lines); i++ {
		switch line := lines[i]; {
		case line == "```go" || line == "```go folded":
			flush()
			from := i + 1
			for i++; i < len(lines) && lines[i] != "```"; i++ {
			}
			code := strings.Join(lines[from:min(i, len(lines))], "\n")
			c, err := newCode(code, line != "```go")
			if err != nil {
				errs = append(errs, fmt.Errorf("lessons/%s.md, code that begins with %q: %w", name, lines[min(from, len(lines)-1)], err))
			}
			l.Cells = append(l.Cells, c)
		case strings.HasPrefix(line, "```go"):
			errs = append(errs, fmt.Errorf("lessons/%s.md: %q; must be ```go or ```go folded", name, line))
		case strings.HasPrefix(line, "## "):
			flush()
			prose = append(prose, line)
		default:
			prose = append(prose, line)
		}
	}
	flush()
	if err := oneScope(l.Cells); err != nil {
		errs = append(errs, fmt.Errorf("lessons/%s.md: %w", name, err))
	}
	return l, errors.Join(errs...)
}
