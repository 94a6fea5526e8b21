// Package prose turns the text of a lesson into HTML: the part of Markdown that the
// lessons use (headings, paragraphs, lists, quotations, tables, code, emphasis,
// links) and formulas between dollar signs. It is no reader of any Markdown there
// is; what it doesn't know it leaves as it stands or names in an error.
package prose

import (
	"errors"
	"fmt"
	"html"
	"regexp"
	"strings"
)

// HTML turns a text into the inside of a page.
func HTML(text string) (string, error) {
	w := writer{lines: strings.Split(strings.Trim(text, "\n"), "\n")}
	for len(w.lines) > 0 {
		w.block()
	}
	return w.out.String(), errors.Join(w.errs...)
}

type writer struct {
	lines []string
	out   strings.Builder
	errs  []error
}

var (
	heading  = regexp.MustCompile(`^(#{1,4}) (.*)$`)
	bullet   = regexp.MustCompile(`^- (.*)$`)
	numbered = regexp.MustCompile(`^(\d+)\. (.*)$`)
)

// block writes the next block.
func (w *writer) block() {
	first := w.lines[0]
	switch {
	case strings.TrimSpace(first) == "":
		w.lines = w.lines[1:]
	case heading.MatchString(first):
		m := heading.FindStringSubmatch(first)
		w.lines = w.lines[1:]
		fmt.Fprintf(&w.out, "<h%d>%s</h%[1]d>\n", len(m[1]), w.inline(m[2]))
	case strings.HasPrefix(first, "```"):
		code := w.take(1, func(l string) bool { return !strings.HasPrefix(l, "```") })
		w.lines = w.lines[min(1, len(w.lines)):]
		fmt.Fprintf(&w.out, "<pre>%s</pre>\n", html.EscapeString(strings.Join(code, "\n")))
	case strings.HasPrefix(first, "    "):
		code := w.take(0, func(l string) bool { return strings.HasPrefix(l, "    ") })
		fmt.Fprintf(&w.out, "<pre>%s</pre>\n", html.EscapeString(strings.ReplaceAll("\n"+strings.Join(code, "\n"), "\n    ", "\n")[1:]))
	case strings.HasPrefix(first, ">"):
		inner := writer{lines: w.take(0, func(l string) bool { return strings.HasPrefix(l, ">") })}
		for i, l := range inner.lines {
			inner.lines[i] = strings.TrimPrefix(strings.TrimPrefix(l, ">"), " ")
		}
		for len(inner.lines) > 0 {
			inner.block()
		}
		w.errs = append(w.errs, inner.errs...)
		w.out.WriteString("<blockquote>\n" + inner.out.String() + "</blockquote>\n")
	case strings.HasPrefix(first, "|"):
		w.table(w.take(0, func(l string) bool { return strings.HasPrefix(l, "|") }))
	case strings.HasPrefix(first, "$$"):
		tex := strings.Join(w.take(0, func(l string) bool { return strings.TrimSpace(l) != "" }), "\n")
		math, err := formula(strings.Trim(tex, "$\n"), true)
		if err != nil {
			w.errs = append(w.errs, err)
		}
		w.out.WriteString("<div class=\"formula\">" + math + "</div>\n")
	case bullet.MatchString(first):
		w.list("ul", bullet)
	case numbered.MatchString(first):
		w.list("ol", numbered)
	default:
		lines := w.take(1, func(l string) bool {
			return strings.TrimSpace(l) != "" && !heading.MatchString(l) && !bullet.MatchString(l) && !strings.HasPrefix(l, ">") && !strings.HasPrefix(l, "|") && !strings.HasPrefix(l, "```")
		})
		w.out.WriteString("<p>" + w.inline(first+"\n"+strings.Join(lines, "\n")) + "</p>\n")
	}
}

// take removes skip lines and then those that go on, and returns the latter.
func (w *writer) take(skip int, on func(string) bool) []string {
	w.lines = w.lines[skip:]
	n := 0
	for n < len(w.lines) && on(w.lines[n]) {
		n++
	}
	taken := append([]string(nil), w.lines[:n]...)
	w.lines = w.lines[n:]
	return taken
}

// list writes items; a line that begins with spaces goes on with its item.
func (w *writer) list(element string, item *regexp.Regexp) {
	w.out.WriteString("<" + element + ">\n")
	for len(w.lines) > 0 && item.MatchString(w.lines[0]) {
		m := item.FindStringSubmatch(w.lines[0])
		more := w.take(1, func(l string) bool { return strings.HasPrefix(l, "  ") })
		w.out.WriteString("<li>" + w.inline(m[len(m)-1]+"\n"+strings.Join(more, "\n")) + "</li>\n")
		if len(w.lines) > 1 && w.lines[0] == "" && item.MatchString(w.lines[1]) {
			w.lines = w.lines[1:]
		}
	}
	w.out.WriteString("</" + element + ">\n")
}

func (w *writer) table(rows []string) {
	w.out.WriteString("<div class=\"wide\"><table>\n")
	for i, r := range rows {
		if i == 1 && strings.Trim(r, "|-: ") == "" {
			continue
		}
		cell := "td"
		if i == 0 {
			cell = "th"
		}
		w.out.WriteString("<tr>")
		for _, c := range strings.Split(strings.Trim(r, "|"), "|") {
			w.out.WriteString("<" + cell + ">" + w.inline(strings.TrimSpace(c)) + "</" + cell + ">")
		}
		w.out.WriteString("</tr>\n")
	}
	w.out.WriteString("</table></div>\n")
}

// pieces are what stands in a line: code and formulas first, so that nothing in
// them is taken for emphasis.
var pieces = regexp.MustCompile("`[^`]+`|\\$[^$]+\\$|\\*\\*[^*]+\\*\\*|\\*[^*]+\\*|\\[[^]]+\\]\\([^)]+\\)")

func (w *writer) inline(text string) string {
	text = strings.TrimSpace(text)
	var out strings.Builder
	for text != "" {
		at := pieces.FindStringIndex(text)
		if at == nil {
			break
		}
		out.WriteString(html.EscapeString(text[:at[0]]))
		piece := text[at[0]:at[1]]
		switch {
		case piece[0] == '`':
			out.WriteString("<code>" + html.EscapeString(piece[1:len(piece)-1]) + "</code>")
		case piece[0] == '$':
			math, err := formula(piece[1:len(piece)-1], false)
			if err != nil {
				w.errs = append(w.errs, fmt.Errorf("%s: %w", piece, err))
			}
			out.WriteString(math)
		case strings.HasPrefix(piece, "**"):
			out.WriteString("<strong>" + w.inline(piece[2:len(piece)-2]) + "</strong>")
		case piece[0] == '*':
			out.WriteString("<em>" + w.inline(piece[1:len(piece)-1]) + "</em>")
		default:
			name, link, _ := strings.Cut(piece[1:len(piece)-1], "](")
			out.WriteString(`<a href="` + html.EscapeString(link) + `">` + w.inline(name) + "</a>")
		}
		text = text[at[1]:]
	}
	out.WriteString(html.EscapeString(text))
	return out.String()
}
