package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// Every key of the types is in the table, and the table has no other.
func TestKeyTableIsThatOfTheTypes(t *testing.T) {
	known, err := keys()
	require.NoError(t, err)
	want := map[string]bool{}
	for _, x := range planTypes() {
		want[x.Name()] = true
		for i := range x.NumField() {
			name, _, _ := strings.Cut(x.Field(i).Tag.Get("json"), ",")
			if x.Field(i).IsExported() && name != "" && name != "-" {
				want[x.Name()+"."+name] = true
			}
		}
	}
	for name := range want {
		require.True(t, known[name].meaning != "", "keys.txt lacks %s", name)
	}
	for name := range known {
		require.True(t, want[name], "keys.txt has %s, the types don't", name)
	}
}

// plansOf are the shipped plans and those to begin with.
func plansOf(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := filepath.Glob("plans/*.json")
	require.NoError(t, err)
	all := map[string][]byte{}
	for _, f := range append(files, "begin/field.json", "begin/si.json") {
		all[f], err = os.ReadFile(f)
		require.NoError(t, err)
	}
	require.GreaterOrEqual(t, len(all), 13)
	return all
}

// A key that the table calls necessary is: without it the reader refuses a plan.
func TestKeysCalledNecessaryAre(t *testing.T) {
	long.Skip(t, "every plan without every key")
	known, err := keys()
	require.NoError(t, err)
	var missed []string
	for name, k := range known {
		typ, field, ok := strings.Cut(name, ".")
		if !ok || !k.required {
			continue
		}
		tried, refused := false, false
		for _, data := range plansOf(t) {
			var tree any
			require.NoError(t, json.Unmarshal(data, &tree))
			if refused || !without(tree, reflect.TypeFor[sequence.Plan](), typ, field) {
				continue
			}
			tried = true
			text, err := json.Marshal(tree)
			require.NoError(t, err)
			_, err = sequence.Read(text)
			refused = refused || err != nil
		}
		if tried && !refused {
			missed = append(missed, name)
		}
	}
	slices.Sort(missed)
	require.Empty(t, missed, "plans read without these")
}

// without takes a key out of every object of a type; false where there is none.
func without(tree any, t reflect.Type, typ, field string) bool {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	done := false
	switch x := tree.(type) {
	case []any:
		for _, e := range x {
			done = without(e, t.Elem(), typ, field) || done
		}
	case map[string]any:
		if t.Kind() == reflect.Map {
			for _, e := range x {
				done = without(e, t.Elem(), typ, field) || done
			}
			return done
		}
		for i := range t.NumField() {
			name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
			if child, ok := x[name]; ok {
				done = without(child, t.Field(i).Type, typ, field) || done
			}
		}
		if _, there := x[field]; there && t.Name() == typ {
			delete(x, field)
			return true
		}
	}
	return done
}

func TestSchemaTakesEveryShippedPlan(t *testing.T) {
	code, out, errs := runs("-schema")
	require.Zero(t, code, errs)
	var schema map[string]any
	require.NoError(t, json.Unmarshal([]byte(out), &schema))
	require.Equal(t, dialect, schema["$schema"])
	for file, data := range plansOf(t) {
		var tree any
		require.NoError(t, json.Unmarshal(data, &tree))
		require.NoError(t, valid(schema, schema, tree, ""), file)
	}
	for text, want := range map[string]string{
		`{"name": "x", "wel": {}}`:                                "wel",
		`{"name": 5}`:                                             "name: is no string",
		`{"fluids": [{"name": "x", "kind": "foam"}]}`:             "fluids[0].kind",
		`{"rules": {"barriers": 1.5}}`:                            "rules.barriers",
		`{"ports": {"name": "x"}}`:                                "ports: is no array",
		`{"steps": [{"name": "x", "ramps": [{"tubing": 3000}]}]}`: "steps[0].ramps[0].tubing",
		`{"formations": [{"name": "x"}]}`:                         "formations[0]: lacks depth",
		`{"assembly": {"strings": [{"name": "x"}]}}`:              "assembly: lacks casing",
		`{"assembly": {"strings": [{"tally": [{"kind": "x"}]}]}}`: "assembly.strings[0].tally[0].kind",
		`{"string": {"held att": "5 ft"}}`:                        "held att",
	} {
		var tree any
		require.NoError(t, json.Unmarshal([]byte(text), &tree))
		require.ErrorContains(t, valid(schema, schema, tree, ""), want)
	}
	density := schema["$defs"].(map[string]any)["Fluid"].(map[string]any)["properties"].(map[string]any)["density"].(map[string]any)
	require.Equal(t, "density", density["x-quantity"])
	require.Contains(t, density["x-units"], "kg/m3")
	require.Contains(t, density, "x-band")
	require.Contains(t, density, "description")
}

// valid holds a tree against the keywords of JSON Schema 2020-12 that the schema
// uses: type, properties, required, additionalProperties, items, enum, $ref.
func valid(root, schema map[string]any, tree any, path string) error {
	if ref, ok := schema["$ref"].(string); ok {
		name := strings.TrimPrefix(ref, "#/$defs/")
		def, ok := root["$defs"].(map[string]any)[name].(map[string]any)
		if !ok {
			return fmt.Errorf("%s: no definition %s", path, name)
		}
		return valid(root, def, tree, path)
	}
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("%s: %s", path, fmt.Sprintf(format, args...)))
	}
	kinds := map[string]bool{}
	switch x := tree.(type) {
	case map[string]any:
		kinds["object"] = true
	case []any:
		kinds["array"] = true
	case string:
		kinds["string"] = true
	case bool:
		kinds["boolean"] = true
	case float64:
		kinds["number"] = true
		kinds["integer"] = x == math.Trunc(x)
	}
	if tree == nil {
		kinds["null"] = true
	}
	fits := false
	for _, kind := range asList(schema["type"]) {
		fits = fits || kinds[kind]
	}
	if !fits {
		fault("is no %v", schema["type"])
		return errors.Join(faults...)
	}
	if list, ok := schema["enum"].([]any); ok && !slices.Contains(list, tree) {
		fault("is %v; there are %v", tree, list)
	}
	switch x := tree.(type) {
	case []any:
		for i, e := range x {
			faults = append(faults, valid(root, schema["items"].(map[string]any), e, fmt.Sprintf("%s[%d]", path, i)))
		}
	case map[string]any:
		properties, _ := schema["properties"].(map[string]any)
		required, _ := schema["required"].([]any)
		for _, name := range required {
			if _, there := x[name.(string)]; !there {
				fault("lacks %s", name)
			}
		}
		for name, e := range x {
			at := strings.TrimPrefix(path+"."+name, ".")
			if p, ok := properties[name].(map[string]any); ok {
				faults = append(faults, valid(root, p, e, at))
			} else if more, ok := schema["additionalProperties"].(map[string]any); ok {
				faults = append(faults, valid(root, more, e, at))
			} else {
				fault("has %s, which isn't known", name)
			}
		}
	}
	return errors.Join(faults...)
}

// asList takes one type or several.
func asList(v any) []string {
	if one, ok := v.(string); ok {
		return []string{one}
	}
	var all []string
	list, _ := v.([]any)
	for _, x := range list {
		all = append(all, x.(string))
	}
	return all
}

// What -json prints is what its schema says, in the units that the schema names.
func TestAnswerIsThatOfItsSchema(t *testing.T) {
	t.Parallel()
	for _, units := range []string{"si", "field"}[:long.Size(1, 2)] {
		code, out, errs := runs("-schema-of-json", "-units", units)
		require.Zero(t, code, errs)
		var schema map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &schema))
		for _, args := range [][]string{{"-samples", "20"}, {"-plan", planFile("setting-shears-isolation-valve"), "-set", "string.seals.seals.up = 30 in"}} {
			_, out, errs := runs(append(args, "-json", "-units", units)...)
			require.Empty(t, errs)
			var tree any
			require.NoError(t, json.Unmarshal([]byte(out), &tree))
			require.NoError(t, valid(schema, schema, tree, ""))
			require.NoError(t, wantUnits(schema, schema, tree, ""))
		}
		require.Error(t, valid(schema, schema, map[string]any{"plan": "x"}, ""), "fields are missing")

		code, out, errs = runs("-schema-of-json", "-brief", "-units", units)
		require.Zero(t, code, errs)
		var short map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &short))
		_, out, errs = runs("-plan", planFile("setting-shears-isolation-valve"), "-json", "-brief", "-units", units)
		require.Empty(t, errs)
		var tree any
		require.NoError(t, json.Unmarshal([]byte(out), &tree))
		require.NoError(t, valid(short, short, tree, ""))
		require.NoError(t, wantUnits(short, short, tree, ""))
		require.Less(t, len(out), 60_000)
	}
}

// wantUnits wants every quantity to end in the unit that the schema names.
func wantUnits(root, schema map[string]any, tree any, path string) error {
	if ref, ok := schema["$ref"].(string); ok {
		schema = root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	var faults []error
	switch x := tree.(type) {
	case string:
		if units, ok := schema["x-unit"].(string); ok && !slices.ContainsFunc(strings.Split(units, " or "), func(u string) bool { return strings.HasSuffix(x, " "+u) }) {
			return fmt.Errorf("%s: %q isn't in %s", path, x, units)
		}
	case []any:
		for i, e := range x {
			faults = append(faults, wantUnits(root, schema["items"].(map[string]any), e, fmt.Sprintf("%s[%d]", path, i)))
		}
	case map[string]any:
		properties, _ := schema["properties"].(map[string]any)
		for name, e := range x {
			if p, ok := properties[name].(map[string]any); ok {
				faults = append(faults, wantUnits(root, p, e, path+"."+name))
			}
		}
	}
	return errors.Join(faults...)
}

// PLAN.md is what the table and the types say.
func TestPlanDoc(t *testing.T) {
	text, err := planDoc()
	require.NoError(t, err)
	if flag.Lookup("update").Value.String() == "true" {
		require.NoError(t, os.WriteFile("PLAN.md", []byte(text), 0o644))
	}
	written, err := os.ReadFile("PLAN.md")
	require.NoError(t, err)
	require.Equal(t, text, string(written), "run the test with -update")
}

func TestNewWritesAPlanThatRuns(t *testing.T) {
	for _, units := range []string{"field", "si"} {
		file := filepath.Join(t.TempDir(), "mine.json")
		code, out, errs := runs("-new", file, "-units", units)
		require.Zero(t, code, errs)
		require.Contains(t, out, "PLAN.md")
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		require.LessOrEqual(t, bytes.Count(data, []byte("\n")), 40, "a plan of forty lines")
		require.GreaterOrEqual(t, bytes.Count(data, []byte(`"note"`)), 12, "with comments")
		code, out, errs = runs("-plan", file)
		require.Zero(t, code, errs)
		require.Contains(t, out, "PROVED")
		require.Contains(t, out, map[string]string{"field": " psi", "si": " bar"}[units], "answered in the plan's units")
		code, _, errs = runs("-new", file)
		require.Equal(t, 2, code)
		require.Contains(t, errs, "writes over nothing")
		code, _, errs = runs("-plan", file, "-report", filepath.Join(t.TempDir(), "r.html"))
		require.Zero(t, code, errs)
	}
	code, _, errs := runs("-new", filepath.Join(t.TempDir(), "x"), "-units", "metre")
	require.Equal(t, 2, code)
	require.Contains(t, errs, "there are field, si or plan")
}
