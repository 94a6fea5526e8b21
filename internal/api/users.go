package api

import (
	"fmt"
	"go/ast"
	"go/build"
	"go/doc"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

const module = "completion.example"

// program is the whole module with its types.
type program struct {
	root     string
	fset     *token.FileSet
	others   types.Importer // of what isn't of the module
	packages map[string]*typed
	info     *types.Info
}

// typed is one package of the module, without its tests.
type typed struct {
	types *types.Package
	code  []*ast.File
	tests [2][]*ast.File // of the package and of its _test package
}

// read checks every package of the module at root, but for tests.
func read(root string) (*program, error) {
	p := &program{root: root, fset: token.NewFileSet(), packages: map[string]*typed{}, info: newInfo()}
	build.Default.CgoEnabled = false // the standard library from source alone
	p.others = importer.ForCompiler(p.fset, "source", nil)
	err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		if base := d.Name(); name != root && (base == "testdata" || strings.HasPrefix(base, ".")) {
			return filepath.SkipDir
		}
		if files, _ := filepath.Glob(filepath.Join(name, "*.go")); len(files) == 0 {
			return nil
		}
		directory, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		_, err = p.Import(module + "/" + filepath.ToSlash(directory))
		return err
	})
	return p, err
}

func newInfo() *types.Info {
	return &types.Info{Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}
}

// Import checks a package of the module once, and takes any other from the compiler's
// sources.
func (p *program) Import(path string) (*types.Package, error) {
	directory, own := strings.CutPrefix(path, module+"/")
	if !own {
		if strings.Contains(strings.Split(path, "/")[0], ".") { // a library from elsewhere uses nothing of ours
			return nil, fmt.Errorf("%s is not looked at", path)
		}
		return p.others.Import(path)
	}
	if t := p.packages[path]; t != nil {
		return t.types, nil
	}
	files, err := build.Default.ImportDir(filepath.Join(p.root, filepath.FromSlash(directory)), 0)
	if err != nil {
		return nil, err
	}
	for _, name := range files.IgnoredGoFiles {
		if strings.HasSuffix(name, "_js.go") { // the page's; what both have is declared twice, which does no harm
			files.GoFiles = append(files.GoFiles, name)
		}
	}
	t := &typed{}
	for list, names := range map[*[]*ast.File][]string{&t.code: files.GoFiles, &t.tests[0]: files.TestGoFiles, &t.tests[1]: files.XTestGoFiles} {
		for _, name := range names {
			f, err := parser.ParseFile(p.fset, filepath.Join(files.Dir, name), nil, parser.ParseComments)
			if err != nil {
				return nil, err
			}
			*list = append(*list, f)
		}
	}
	t.types, _ = p.config().Check(path, p.fset, t.code, p.info)
	p.packages[path] = t
	return t.types, nil
}

// config goes on where a type of a library from elsewhere isn't known.
func (p *program) config() *types.Config {
	return &types.Config{Importer: p, Error: func(error) {}, FakeImportC: true}
}

// unused returns the exported functions, methods, types, constants and variables
// without a user: neither code of another package, nor an Example with output, nor a
// lesson or the README, nor the signature or field of what has a user.
func (p *program) unused() []string {
	u := users{program: p, has: map[string]bool{}, family: map[string]bool{}, methods: map[string]bool{}}
	for id, o := range p.info.Uses {
		if o.Pkg() != nil && o.Pkg() != p.packageAt(id.Pos()) {
			u.use(o)
		}
	}
	for path, t := range p.packages {
		u.tests(path, t)
		for _, f := range t.code {
			ast.Inspect(f, u.asked)
		}
	}
	u.texts()
	var list []string
	for path, t := range p.packages {
		if t.types.Name() == "main" || strings.HasSuffix(path, "test") || strings.HasPrefix(path, module+"/examples/") {
			continue
		}
		for _, name := range t.types.Scope().Names() {
			o := t.types.Scope().Lookup(name)
			if !o.Exported() {
				continue
			}
			if !u.used(o) && !isError(o) {
				list = append(list, key(o))
			}
			if n, ok := o.Type().(*types.Named); ok && o.Name() == n.Obj().Name() {
				for m := range n.Methods() {
					if m.Exported() && !u.has[key(m)] && !u.answers(n, m) {
						list = append(list, key(m))
					}
				}
			}
		}
	}
	slices.Sort(list)
	return list
}

// isError tells whether an object is an error, which is exported for errors.Is and As.
func isError(o types.Object) bool {
	_, isVariable := o.(*types.Var)
	return isVariable && strings.HasPrefix(o.Name(), "Err") || strings.HasSuffix(o.Name(), "Error")
}

// packageAt is the package whose code has a position.
func (p *program) packageAt(at token.Pos) *types.Package {
	directory, err := filepath.Rel(p.root, filepath.Dir(p.fset.Position(at).Filename))
	if err != nil {
		return nil
	}
	if t := p.packages[module+"/"+filepath.ToSlash(directory)]; t != nil {
		return t.types
	}
	return nil
}

// key is a name as the list has it: tubular/drag.Prepared.SetDown.
func key(o types.Object) string {
	name := o.Name()
	if f, ok := o.(*types.Func); ok {
		if r := f.Signature().Recv(); r != nil {
			t := r.Type()
			if q, ok := t.(*types.Pointer); ok {
				t = q.Elem()
			}
			if n, ok := t.(*types.Named); ok {
				name = n.Obj().Name() + "." + name
			}
		}
	}
	return strings.TrimPrefix(o.Pkg().Path(), module+"/") + "." + name
}

// users gathers what has one.
type users struct {
	*program
	has     map[string]bool
	family  map[string]bool // methods by package, name and signature: what one fluid is asked, all answer
	methods map[string]bool // that interfaces ask for
}

// use notes an object, and the types that one needs to use it.
func (u *users) use(o types.Object) {
	if o.Pkg() == nil || !strings.HasPrefix(o.Pkg().Path(), module) {
		return
	}
	if f, ok := o.(*types.Func); ok {
		o = f.Origin()
	}
	if v, ok := o.(*types.Var); ok && v.IsField() {
		return
	}
	if u.has[key(o)] {
		return
	}
	u.has[key(o)] = true
	if f, ok := o.(*types.Func); ok && f.Signature().Recv() != nil {
		u.family[o.Pkg().Path()+"."+o.Name()+signature(f)] = true
	}
	if t, ok := o.(*types.TypeName); ok {
		u.reach(t.Type().Underlying())
	}
	u.reach(o.Type())
}

// asked notes the methods of interfaces, such as those in x.(interface{ Values() [3]any }).
func (u *users) asked(n ast.Node) bool {
	if t, ok := n.(*ast.InterfaceType); ok {
		for _, m := range t.Methods.List {
			for _, name := range m.Names {
				u.methods[name.Name] = true
			}
		}
	}
	return true
}

// signature is a method's without its receiver.
func signature(m *types.Func) string {
	s := m.Signature()
	return types.TypeString(types.NewSignatureType(nil, nil, nil, s.Params(), s.Results(), s.Variadic()), nil)
}

func (u *users) reach(t types.Type) {
	switch t := t.(type) {
	case *types.Named:
		u.use(t.Origin().Obj())
		for a := range t.TypeArgs().Types() {
			u.reach(a)
		}
	case *types.Alias:
		u.use(t.Obj())
	case *types.Pointer:
		u.reach(t.Elem())
	case *types.Slice:
		u.reach(t.Elem())
	case *types.Array:
		u.reach(t.Elem())
	case *types.Map:
		u.reach(t.Key())
		u.reach(t.Elem())
	case *types.Struct:
		for f := range t.Fields() {
			if f.Exported() {
				u.reach(f.Type())
			}
		}
	case *types.TypeParam:
		u.reach(t.Constraint())
	case *types.Signature:
		for p := range t.TypeParams().TypeParams() {
			u.reach(p)
		}
		for v := range t.Params().Variables() {
			u.reach(v.Type())
		}
		for v := range t.Results().Variables() {
			u.reach(v.Type())
		}
	case *types.Interface:
		for m := range t.Methods() {
			u.reach(m.Type())
		}
	}
}

// used tells it of an object of a package's scope: a constant of an enumeration is
// used with its type, and so is a quantity's unit.
func (u *users) used(o types.Object) bool {
	if u.has[key(o)] {
		return true
	}
	if c, ok := o.(*types.Const); ok {
		if n, ok := c.Type().(*types.Named); ok && n.Obj().Pkg() == o.Pkg() {
			return u.has[key(n.Obj())]
		}
	}
	return false
}

// answers tells whether a method is there for an interface of the module, of
// printing, of texts or of errors, or says what is wrong, shows or writes working.
func (u *users) answers(n *types.Named, m *types.Func) bool {
	switch m.Name() {
	case "String", "Error", "Unwrap", "Is", "As", "Validate", "Steps", "StepsNamed", "MarshalText", "UnmarshalText", "MarshalJSON", "UnmarshalJSON", "Set", "Format", "Len", "Less", "Swap":
		return true
	}
	if u.methods[m.Name()] || u.family[n.Obj().Pkg().Path()+"."+m.Name()+signature(m)] {
		return true
	}
	return false
}

// tests notes what Examples with output use, and of internal packages what the
// tests of others do: some are made for them.
func (u *users) tests(path string, t *typed) {
	var shown []*ast.BlockStmt
	for _, files := range t.tests {
		for _, f := range files {
			for _, e := range doc.Examples(f) {
				if e.Output == "" && !e.EmptyOutput {
					continue
				}
				for _, d := range f.Decls {
					if fn, ok := d.(*ast.FuncDecl); ok && fn.Name.Name == "Example"+e.Name {
						shown = append(shown, fn.Body)
					}
				}
			}
		}
	}
	for i, files := range t.tests {
		if len(files) == 0 {
			continue
		}
		info, first := newInfo(), files[0].Pos()
		if i == 0 {
			files = append(slices.Clone(t.code), files...)
		}
		_, _ = u.config().Check(path, u.fset, files, info)
		for id, o := range info.Uses {
			switch {
			case o.Pkg() == nil:
			case o.Pkg().Path() != path && strings.Contains(o.Pkg().Path(), "/internal/") && id.Pos() >= first:
				u.use(o)
			case slices.ContainsFunc(shown, func(b *ast.BlockStmt) bool { return b.Pos() <= id.Pos() && id.Pos() < b.End() }):
				u.use(o)
			}
		}
	}
}

// texts notes what lessons and README name.
func (u *users) texts() {
	files, _ := filepath.Glob(filepath.Join(u.root, "examples/notebooks/lessons/*.md"))
	var all strings.Builder
	for _, name := range append(files, filepath.Join(u.root, "README.md")) {
		text, _ := os.ReadFile(name)
		all.Write(text)
	}
	said := map[string]bool{}
	for _, m := range regexp.MustCompile(`(\w+)\.([A-Z]\w*)`).FindAllStringSubmatch(all.String(), -1) {
		said[m[1]+"."+m[2]], said["."+m[2]] = true, true
	}
	for _, t := range u.packages {
		for _, name := range t.types.Scope().Names() {
			o := t.types.Scope().Lookup(name)
			if said[t.types.Name()+"."+name] {
				u.use(o)
			}
			if n, ok := o.Type().(*types.Named); ok {
				for m := range n.Methods() {
					if said["."+m.Name()] {
						u.use(m)
					}
				}
			}
		}
	}
}
