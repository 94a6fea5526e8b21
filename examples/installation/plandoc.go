package main

import (
	"fmt"
	"reflect"
	"strings"

	"completion.example/valve/sequence"
)

// planDoc writes PLAN.md: what every key of a plan means, type by type.
func planDoc() (string, error) {
	known, err := keys()
	if err != nil {
		return "", err
	}
	b := &strings.Builder{}
	b.WriteString("# The keys of a plan\n\nMade from `keys.txt` and the types of package `valve/sequence`; `go test ./examples/installation -run TestPlanDoc -update` writes it anew.\n\n" +
		"A plan is a JSON file. Quantities are text with their unit, such as `\"3000 psi\"`. Where a band is read, a tolerance may stand with the value: `\"3000 psi +/- 5 %\"`, `\"2850 psi .. 3150 psi\"`. " +
		"JSON has no comments: the keys `note` take any text. An unknown key is an error that names the known ones. `go run ./examples/installation -new FILE` writes a plan to begin with, `-schema` prints all this for machines.\n")
	for _, t := range planTypes() {
		fmt.Fprintf(b, "\n## %s\n\n%s\n\n| key | what is written | where left out | meaning |\n|---|---|---|---|\n", t.Name(), known[t.Name()].meaning)
		for i := range t.NumField() {
			f := t.Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if !f.IsExported() || name == "" || name == "-" {
				continue
			}
			k := known[t.Name()+"."+name]
			standard := k.standard
			if k.required {
				standard = "must be there"
			}
			meaning := k.meaning
			if old := f.Tag.Get("was"); old != "" {
				meaning += fmt.Sprintf(" (older files: `%s`)", old)
			}
			fmt.Fprintf(b, "| `%s` | %s | %s | %s |\n", name, kindWords(f.Type), standard, meaning)
		}
	}
	return b.String(), nil
}

// planTypes are the struct types of a plan in the order in which they are met.
func planTypes() []reflect.Type {
	var all []reflect.Type
	seen := map[reflect.Type]bool{}
	var walk func(t reflect.Type)
	walk = func(t reflect.Type) {
		switch t.Kind() {
		case reflect.Pointer, reflect.Slice, reflect.Map:
			walk(t.Elem())
		case reflect.Struct:
			if _, _, _, quantity := quantityOf(t); quantity || seen[t] {
				return
			}
			seen[t] = true
			all = append(all, t)
			for i := range t.NumField() {
				if t.Field(i).IsExported() {
					walk(t.Field(i).Type)
				}
			}
		}
	}
	walk(reflect.TypeFor[sequence.Plan]())
	return all
}

// kindWords say what is written for a type.
func kindWords(t reflect.Type) string {
	if t.Kind() == reflect.Pointer {
		return kindWords(t.Elem())
	}
	if list, ok := words[t]; ok {
		return "`" + strings.Join(list, "`, `") + "`"
	}
	if quantity, units, band, ok := quantityOf(t); ok {
		if units[0] == "" {
			return "band of " + quantity + ", such as `0.2 +/- 10 %`"
		}
		text := quantity + ", such as `… " + units[0] + "`"
		if len(units) > 1 {
			text = fmt.Sprintf("%s, in `%s`", quantity, strings.Join(units, "` `"))
		}
		if band {
			return "band of " + text
		}
		return text
	}
	switch t.Kind() {
	case reflect.Slice:
		return "list: " + kindWords(t.Elem())
	case reflect.Map:
		return "object, by name: " + kindWords(t.Elem())
	case reflect.Struct:
		return "[" + t.Name() + "](#" + strings.ToLower(t.Name()) + ")"
	case reflect.Bool:
		return "true or false"
	case reflect.Int:
		return "whole number"
	case reflect.Float64:
		return "number"
	}
	return "text"
}
