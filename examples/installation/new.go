package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// The plans to begin with: they run as they are.
//
//go:embed begin/field.json
var beginField []byte

//go:embed begin/si.json
var beginSI []byte

// writeNew writes a plan to begin with, in metres and bar where units is si. It
// never writes over a file.
func writeNew(out io.Writer, name, units string) error {
	data := beginField
	switch units {
	case "si":
		data = beginSI
	case "field", "plan":
	default:
		return fmt.Errorf("-units is %q; there are %s", units, unitsNames)
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already; -new writes over nothing", name)
	}
	if err != nil {
		return err
	}
	if _, err := f.Write(data); err != nil {
		f.Close() //nolint:errcheck // the first error counts
		return err
	}
	fmt.Fprintf(out, "%s is a plan to begin with; it runs as it is: go run ./examples/installation -plan %s\n", name, name)
	fmt.Fprintln(out, "Everything in it is invented. What each key means: examples/installation/PLAN.md. -units si with -new writes it in metres and bar.")
	return f.Close()
}
