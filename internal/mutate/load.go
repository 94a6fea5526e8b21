package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// listed is what the go command knows of a package.
type listed struct {
	ImportPath, Dir, Export                                                string
	GoFiles, TestGoFiles, XTestGoFiles, Imports, TestImports, XTestImports []string
	Standard                                                               bool
	Module                                                                 *struct{ Path, Dir string }
}

func list(root string, args ...string) ([]listed, error) {
	cmd := exec.Command("go", append([]string{"list", "-json"}, args...)...)
	cmd.Dir = root
	var faults bytes.Buffer
	cmd.Stderr = &faults
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list %s: %w\n%s", strings.Join(args, " "), err, faults.String())
	}
	var all []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		all = append(all, l)
	}
}

// source is a package with its types.
type source struct {
	listed
	name  string // import path below the module
	fset  *token.FileSet
	files []*ast.File
	text  map[*ast.File][]byte
	types *types.Package
	info  *types.Info
}

// load parses and checks packages of the module at root.
func load(root string, patterns ...string) ([]*source, error) {
	all, err := list(root, append([]string{"-export", "-deps", "--"}, patterns...)...)
	if err != nil {
		return nil, err
	}
	named, err := list(root, append([]string{"--"}, patterns...)...)
	if err != nil {
		return nil, err
	}
	exports := map[string]string{}
	for _, l := range all {
		exports[l.ImportPath] = l.Export
	}
	var sources []*source
	for _, l := range named {
		s, err := check(l, exports)
		if err != nil {
			return nil, err
		}
		sources = append(sources, s)
	}
	return sources, nil
}

func check(l listed, exports map[string]string) (*source, error) {
	s := &source{
		listed: l, name: strings.TrimPrefix(l.ImportPath, l.Module.Path+"/"),
		fset: token.NewFileSet(), text: map[*ast.File][]byte{},
		info: &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}},
	}
	for _, name := range l.GoFiles {
		path := filepath.Join(l.Dir, name)
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		f, err := parser.ParseFile(s.fset, path, text, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		s.files, s.text[f] = append(s.files, f), text
	}
	lookup := func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) }
	conf := types.Config{Importer: importer.ForCompiler(s.fset, "gc", lookup)}
	var err error
	s.types, err = conf.Check(l.ImportPath, s.fset, s.files, s.info)
	return s, err
}

// moduleRoot finds go.mod above the working directory.
func moduleRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", err
	}
	mod := strings.TrimSpace(string(out))
	if mod == "" || mod == os.DevNull {
		return "", errors.New("no go.mod above this directory")
	}
	return filepath.Dir(mod), nil
}
