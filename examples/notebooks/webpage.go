package main

import (
	_ "embed"
	"errors"
	"fmt"
	"go/scanner"
	"go/token"
	"html"
	"html/template"
	"strings"

	"completion.example/examples/notebooks/internal/prose"
)

//go:embed page.html
var pageText string

//go:embed page.css
var pageStyle string

var page = template.Must(template.New("page").Parse(pageText))

// sheet is what a page is made from.
type sheet struct {
	Title    string
	Style    template.CSS
	Body     template.HTML
	Previous *Lesson
	Next     *Lesson
	Index    bool
}

// webpage writes a lesson as a page to read or print, which needs no network.
func webpage(lessons []Lesson, i int, printed map[int][]Output) (string, error) {
	l := lessons[i]
	var body strings.Builder
	opening, err := prose.HTML(l.opening())
	errs := []error{err}
	body.WriteString(opening)
	answers := false
	for k, c := range l.Cells {
		if c.Kind == Text {
			text, err := prose.HTML(c.Source)
			errs = append(errs, err)
			class := sections[firstLine(c.Source)]
			answers = class == "answers"
			if class != "" {
				text = `<section class="` + class + `">` + "\n" + text + "</section>\n"
			}
			body.WriteString(text)
			continue
		}
		code := "<div class=\"cell\">\n<pre class=\"code\">" + highlight(c.Source) + "</pre>\n"
		for _, o := range printed[k] {
			if o.Picture != "" {
				code += "<figure>" + o.Picture + "</figure>\n"
				continue
			}
			code += "<pre class=\"output\">" + html.EscapeString(strings.TrimSuffix(o.Text, "\n")) + "</pre>\n"
		}
		code += "</div>\n"
		if c.Folded {
			summary := "Code"
			if answers {
				summary = "Answers, computed"
			}
			code = "<details>\n<summary>" + summary + "</summary>\n" + code + "</details>\n"
		}
		body.WriteString(code)
	}
	s := sheet{Title: fmt.Sprintf("%d. %s", l.Number, l.Title), Style: template.CSS(pageStyle), Body: template.HTML(body.String())} //nolint:gosec // text of our own
	if i > 0 {
		s.Previous = &lessons[i-1]
	}
	if i+1 < len(lessons) {
		s.Next = &lessons[i+1]
	}
	return render(s, errs...)
}

// index writes the page from which the lessons are opened.
func index(lessons []Lesson) (string, error) {
	text := "# Pressure-operated completions: the course\n\n" + caution + "\n\n| | lesson | hours | needs |\n|---|---|---|---|\n"
	for _, l := range lessons {
		text += fmt.Sprintf("| %d | [%s](%s.html): %s | %s | %s |\n", l.Number, l.Title, l.Name, l.Gives, l.Hours, l.Needs)
	}
	body, err := prose.HTML(text)
	return render(sheet{Title: "The course", Style: template.CSS(pageStyle), Body: template.HTML(body), Index: true}, err) //nolint:gosec // text of our own
}

func render(s sheet, errs ...error) (string, error) {
	var out strings.Builder
	errs = append(errs, page.Execute(&out, s))
	return out.String(), errors.Join(errs...)
}

func firstLine(s string) string {
	first, _, _ := strings.Cut(s, "\n")
	return first
}

// highlight marks keywords, texts and comments of Go.
func highlight(source string) string {
	var s scanner.Scanner
	files := token.NewFileSet()
	file := files.AddFile("", files.Base(), len(source))
	s.Init(file, []byte(source), nil, scanner.ScanComments)
	var out strings.Builder
	at := 0
	for {
		pos, kind, text := s.Scan()
		if kind == token.EOF {
			break
		}
		class := ""
		switch {
		case kind.IsKeyword():
			class = "k"
		case kind == token.STRING || kind == token.CHAR:
			class = "t"
		case kind == token.COMMENT:
			class = "c"
		default:
			continue
		}
		from := file.Offset(pos)
		out.WriteString(html.EscapeString(source[at:from]) + `<span class="` + class + `">` + html.EscapeString(text) + "</span>")
		at = from + len(text)
	}
	return out.String() + html.EscapeString(source[at:])
}
