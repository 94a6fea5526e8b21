//go:build !js

package main

import (
	"html/template"
	"io"
	"strings"

	"completion.example/internal/calculator"
)

// fill writes the page.
func (c *content) fill(out io.Writer) error {
	t, err := template.New("report").Funcs(template.FuncMap{
		"join":    func(s []string) string { return strings.Join(s, ", ") },
		"whole":   calculator.Whole,
		"title":   title,
		"share":   share,
		"drawing": func(m markup) template.HTML { return template.HTML(m) }, //nolint:gosec // our own drawings
		"style":   func(m markup) template.CSS { return template.CSS(m) },   //nolint:gosec // our own styles
	}).Parse(page)
	if err != nil {
		return err
	}
	return t.Execute(out, c)
}
