// Notebooks is a course on pressure-operated completions in sixteen lessons: text,
// Go code, what the code prints, and pictures that it draws.
//
// A lesson is written in lessons/NAME.md and nowhere else. This program puts the
// lessons' code together, runs it outside of the library's module, and writes each
// lesson with what it printed as a Jupyter notebook (nbformat 4.5, an open
// standard), as a page to read or print, and as a plain Go program:
//
//	go run ./examples/notebooks -o DIR
//
// The notebooks beside it are those, and a test holds them to what the code prints.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"completion.example/internal/calculator"
)

func main() { os.Exit(start(os.Args[1:], os.Stdout, os.Stderr)) }

func start(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("notebooks", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	dir := flags.String("o", "", "run all lessons and write them into this `folder`: pages (begin with index.html), notebooks, and programs/")
	asJSON := flags.Bool("json", false, "print the list of lessons as JSON")
	if err := calculator.Parse(flags, args); errors.Is(err, flag.ErrHelp) {
		fmt.Fprint(out, "notebooks: the course, lesson by lesson, or written as pages and notebooks.\n\nusage: go run ./examples/notebooks [-o DIR] [-json]\n\n")
		flags.SetOutput(out)
		flags.PrintDefaults()
		return 0
	} else if err != nil {
		fmt.Fprintf(errs, "%v\nnotebooks -h lists the flags.\n", err)
		return 2
	}
	lessons, err := readLessons()
	if err == nil && *dir != "" {
		err = writeAll(context.Background(), *dir, lessons)
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return 1
	}
	switch {
	case *asJSON:
		e := json.NewEncoder(out)
		e.SetIndent("", "  ")
		err = e.Encode(lessons)
	case *dir != "":
		_, err = fmt.Fprintln(out, "written; begin with", filepath.Join(*dir, "index.html"))
	default:
		for _, l := range lessons {
			fmt.Fprintf(out, "%2d. %s (%s h)\n    %s\n", l.Number, l.Title, l.Hours, l.Gives)
		}
		_, err = fmt.Fprintln(out, "\nRead them in examples/notebooks/*.ipynb, or write pages to read or print: go run ./examples/notebooks -o DIR")
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return 1
	}
	return 0
}

// writeAll runs the lessons and writes them in all forms.
func writeAll(ctx context.Context, dir string, lessons []Lesson) error {
	printed, err := run(ctx, lessons)
	if err != nil {
		return err
	}
	files, faults := map[string]string{}, []error{}
	var first error
	files["index.html"], first = index(lessons)
	faults = append(faults, first)
	for i, l := range lessons {
		book, err1 := l.notebook(printed[l.Name])
		text, err2 := webpage(lessons, i, printed[l.Name])
		files[l.Name+".ipynb"], files[l.Name+".html"] = string(book), text
		files["programs/"+l.Name+"/main.go"] = l.program()
		faults = append(faults, err1, err2)
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	if err := write(dir, files); err != nil {
		return err
	}
	return module(ctx, filepath.Join(dir, "programs"))
}
