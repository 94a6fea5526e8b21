package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"completion.example/examples/notebooks/picture"
)

// Output is what a cell printed: text, or a picture.
type Output struct {
	Text    string
	Picture string // SVG
}

// program is a lesson as one Go program: its import cell, its declarations, and all
// its statements in main, in their order.
func (l Lesson) program() string {
	var head, body strings.Builder
	for _, c := range l.Cells {
		switch c.Kind {
		case Imports, Declarations:
			head.WriteString("\n" + c.Source + "\n")
		case Statements:
			body.WriteString("\n" + c.Source + "\n")
		}
	}
	return "// Lesson " + strconv.Itoa(l.Number) + ": " + l.Title + "\npackage main\n" + head.String() + "\nfunc main() {" + body.String() + "}\n"
}

// steps is the lesson as a package in which each cell of statements is a function,
// so that what it prints can be told from what the others print.
func (l Lesson) steps() string {
	var head, body strings.Builder
	list := "\n// Cells are the cells by their place in the lesson.\nvar Cells = map[int]func(){\n"
	for i, c := range l.Cells {
		switch c.Kind {
		case Imports, Declarations:
			head.WriteString("\n" + c.Source + "\n")
		case Statements:
			fmt.Fprintf(&body, "\nfunc cell%d() {\n%s\n}\n", i, c.Source)
			list += fmt.Sprintf("\t%d: cell%d,\n", i, i)
		}
	}
	return "package lesson\n" + head.String() + list + "}\n" + body.String()
}

// all is the program that runs the cells of all lessons, each after a mark.
func all(lessons []Lesson) string {
	imports, list := "", ""
	for _, l := range lessons {
		imports += fmt.Sprintf("\tlesson%d \"my.example/lessons/%s\"\n", l.Number, l.Name)
		list += fmt.Sprintf("\t{%q, lesson%d.Cells},\n", l.Name, l.Number)
	}
	return "package main\n\nimport (\n\t\"fmt\"\n\t\"maps\"\n\t\"slices\"\n\n" + imports + ")\n\nfunc main() {\n\tfor _, l := range []struct {\n\t\tname  string\n\t\tcells map[int]func()\n\t}{\n" + list +
		"\t} {\n\t\tfor _, i := range slices.Sorted(maps.Keys(l.cells)) {\n\t\t\tfmt.Printf(\"\\x00%s %d\\n\", l.name, i)\n\t\t\tl.cells[i]()\n\t\t}\n\t}\n}\n"
}

// module writes into dir what makes it a module of its own, with the line that says
// where this library is, and returns that place.
func module(ctx context.Context, dir string) error {
	cmd := exec.CommandContext(ctx, "go", "list", "-m", "-f", "{{.Dir}}", "completion.example")
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("where is completion.example? run this in its folder, or in a module that requires it: %w", withWords(err))
	}
	root := strings.TrimSpace(string(out))
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return err
	}
	text := strings.Replace(string(mod), "module completion.example\n", "module my.example/lessons\n", 1) +
		"\nrequire completion.example v0.0.0\n\nreplace completion.example => " + strconv.Quote(root) + "\n"
	sum, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return err
	}
	return write(dir, map[string]string{"go.mod": text, "go.sum": string(sum)})
}

// write writes files by their names, and makes the folders they are in.
func write(dir string, files map[string]string) error {
	for name, text := range files {
		file := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil { //nolint:gosec // to be read by everybody
			return err
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil { //nolint:gosec // to be read by everybody
			return err
		}
	}
	return nil
}

var (
	mark   = regexp.MustCompile(`\x00([a-z0-9-]+) (\d+)\n`)
	inline = regexp.MustCompile(`(?s)<svg .*?</svg>\n`)
)

// run builds all lessons once, outside of the library's own module, and returns
// what each cell of each printed.
func run(ctx context.Context, lessons []Lesson) (map[string]map[int][]Output, error) {
	dir, err := os.MkdirTemp("", "lessons")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	if err := module(ctx, dir); err != nil {
		return nil, err
	}
	files := map[string]string{"main.go": all(lessons)}
	for _, l := range lessons {
		files[l.Name+"/lesson.go"] = l.steps()
	}
	if err := write(dir, files); err != nil {
		return nil, err
	}
	binary := filepath.Join(dir, "lessons.exe")
	build := exec.CommandContext(ctx, "go", "build", "-mod=mod", "-trimpath", "-o", binary, ".") //nolint:gosec // a program of our own
	build.Dir, build.Env = dir, append(os.Environ(), "GOWORK=off")
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the lessons don't compile:\n%s", out)
	}
	cmd := exec.CommandContext(ctx, binary) //nolint:gosec // a program of our own
	cmd.Dir, cmd.Env = dir, append(os.Environ(), picture.Inline+"=yes")
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil {
		at := mark.FindAllSubmatch(out, -1)
		last := "the start"
		if len(at) > 0 {
			last = string(at[len(at)-1][0][1:])
		}
		return nil, fmt.Errorf("a lesson stops at %s: %w\n%s", last, err, complaints.String())
	}
	return outputs(string(out)), nil
}

// outputs parts what was printed into cells, and text from pictures.
func outputs(printed string) map[string]map[int][]Output {
	found := map[string]map[int][]Output{}
	at := mark.FindAllStringSubmatchIndex(printed, -1)
	for k, m := range at {
		end := len(printed)
		if k+1 < len(at) {
			end = at[k+1][0]
		}
		name, rest := printed[m[2]:m[3]], printed[m[1]:end]
		cell, _ := strconv.Atoi(printed[m[4]:m[5]])
		if found[name] == nil {
			found[name] = map[int][]Output{}
		}
		for rest != "" {
			p := inline.FindStringIndex(rest)
			if p == nil {
				p = []int{len(rest), len(rest)}
			}
			if p[0] > 0 {
				found[name][cell] = append(found[name][cell], Output{Text: rest[:p[0]]})
			}
			if p[1] > p[0] {
				found[name][cell] = append(found[name][cell], Output{Picture: rest[p[0]:p[1]]})
			}
			rest = rest[p[1]:]
		}
	}
	return found
}

// withWords adds what a command said to its error.
func withWords(err error) error {
	if exit, ok := err.(*exec.ExitError); ok { //nolint:errorlint // straight from the command
		return fmt.Errorf("%w: %s", err, bytes.TrimSpace(exit.Stderr))
	}
	return err
}
