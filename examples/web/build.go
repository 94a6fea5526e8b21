package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"completion.example/examples/internal/calculators"
	"completion.example/examples/web/internal/lzma"
)

//go:embed page/index.html
var index string

//go:embed page/look.css
var look string

//go:embed page/page.js
var script string

//go:embed page/worker.js
var worker string

// The program that the page runs, and the folder of its drawings' styles.
const program = "completion.example/examples/installation"

// smaller leaves out inlining, which makes the program a tenth smaller and a plan some
// tenths slower, and what only debuggers read.
var smaller = []string{"-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l"}

// build compiles the program and returns the page.
func build(ctx context.Context) ([]byte, error) {
	folder, err := os.MkdirTemp("", "web")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder) //nolint:errcheck // a temporary folder
	file := filepath.Join(folder, "program.wasm")
	if _, err := goCommand(ctx, append(append([]string{"build"}, smaller...), "-o", file, program)...); err != nil {
		return nil, err
	}
	wasm, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	if wasm, err = joined(wasm); err != nil {
		return nil, err
	}
	root, err := goCommand(ctx, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	glue, err := os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, fmt.Errorf("the Go distribution has no lib/wasm/wasm_exec.js: %w", err)
	}
	dir, err := goCommand(ctx, "list", "-f", "{{.Dir}}", program)
	if err != nil {
		return nil, err
	}
	drawings, err := os.ReadFile(filepath.Join(dir, "drawings.css"))
	if err != nil {
		return nil, err
	}
	return page(lzma.Encode(wasm), string(drawings), string(glue))
}

// goCommand runs the Go command for the browser and returns what it prints.
func goCommand(ctx context.Context, args ...string) (string, error) {
	c := exec.CommandContext(ctx, "go", args...) //nolint:gosec // our own arguments
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	if err := c.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", args[0], err, errs.String())
	}
	return strings.TrimSpace(out.String()), nil
}

// page puts the page together. Its policy lets nothing run but its own script and
// the program, and lets neither connect anywhere; a worker made from the page has
// the page's policy.
func page(packed []byte, drawings, glue string) ([]byte, error) {
	look, glue, worker, script := terse(drawings+look), terse(glue), terse(worker), terse(script)
	questions, err := json.Marshal(calculators.AllQuestions()) // its brackets are escaped
	if err != nil {
		return nil, err
	}
	for _, text := range []string{glue, worker, script, look} {
		if strings.Contains(strings.ToLower(text), "</script") || strings.Contains(strings.ToLower(text), "</style") || strings.Contains(text, "<!--") {
			return nil, errors.New("a part of the page would end its element")
		}
	}
	policy := "default-src 'none'; script-src " + hash(script) + " 'wasm-unsafe-eval'; style-src " + hash(look) +
		"; worker-src blob:; connect-src 'none'; form-action 'none'; base-uri 'none'"
	return []byte(strings.NewReplacer("{{policy}}", policy, "{{look}}", look, "{{worker}}", glue+"\n"+worker, "{{script}}", script, "{{questions}}", string(questions),
		"{{packed}}", base64.StdEncoding.EncodeToString(packed)).Replace(index)), nil
}

// terse leaves out of a script or style what only its readers need: indents, empty lines and
// comments of a whole line, but for whose it is.
func terse(text string) string {
	var kept []string
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		note := strings.HasPrefix(line, "//") || strings.HasPrefix(line, "/*") && strings.HasSuffix(line, "*/")
		if note && !strings.Contains(line, "Copyright") && !strings.Contains(strings.ToLower(line), "license") {
			continue
		}
		if line != "" {
			kept = append(kept, line)
		}
	}
	return strings.Join(kept, "\n")
}

func hash(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
