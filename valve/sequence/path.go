package sequence

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"completion.example/internal/spelling"
	"completion.example/internal/strictjson"
)

// route is a way from the plan to one of its values.
type route struct {
	path    string // in full, as the plan's file has it
	skipped int    // parts that the text left out
	steps   []part
}

// part is one step of a route.
type part struct {
	field int    // of a struct, or
	index int    // of a list, or
	key   string // of a map
	kind  reflect.Kind
}

// finder looks for the values of a plan that a text may mean. A text is the path
// of the value in the plan's file, its parts with dots between them: keys, names
// of things that have one, or numbers in brackets counted from 0. Names may have
// spaces and dots in them. Parts other than the first may be left out where what
// is left means one value.
type finder struct {
	found []route
	// Where no route comes to the end: how much of the text is used up at the best,
	// and what could stand next there.
	used  int
	where string
	next  []string // at once
	deep  []string // after parts that may be left out
	text  string
}

// find returns the route that a text means.
func find(root reflect.Value, text string) (route, error) {
	f := finder{text: text, used: -1}
	f.look(root, text, route{}, false)
	if len(f.found) == 0 {
		return route{}, f.miss()
	}
	least := slices.MinFunc(f.found, func(a, b route) int { return a.skipped - b.skipped }).skipped
	var best []route
	for _, r := range f.found {
		if r.skipped == least {
			best = append(best, r)
		}
	}
	if len(best) > 1 {
		var paths []string
		for _, r := range best[:min(6, len(best))] {
			paths = append(paths, r.path)
		}
		return route{}, fmt.Errorf("sequence: %q may mean %d values: %s; write more of the path", text, len(best), strings.Join(paths, "; "))
	}
	return best[0], nil
}

func (f *finder) miss() error {
	word := f.text[f.used:]
	if i := strings.IndexAny(word, ".["); i >= 0 {
		word = word[:i]
	}
	text := fmt.Sprintf("sequence: the plan has no %q", f.text)
	if f.where != "" {
		text += fmt.Sprintf("; in %s there is no %q", f.where, word)
	}
	if near := spelling.Near(strings.TrimSpace(word), append(f.next, f.deep...)); len(near) > 0 {
		return fmt.Errorf("%s; did you mean %q?", text, near[0])
	}
	if len(f.next) > 12 {
		return fmt.Errorf("%s; there are %s, and %d more", text, strings.Join(f.next[:12], ", "), len(f.next)-12)
	}
	return fmt.Errorf("%s; there are %s", text, strings.Join(f.next, ", "))
}

// look goes on from v with what is left of the text. After skipping a part the
// value that v is may not be the end: the last part is always written.
func (f *finder) look(v reflect.Value, rest string, so route, skipping bool) {
	if rest == "" && !skipping && len(so.steps) > 0 {
		f.found = append(f.found, so)
		return
	}
	var known []string
	children(v, func(names []string, p part, child reflect.Value) {
		known = append(known, names[0])
		further := so
		further.steps = append(slices.Clone(so.steps), p)
		further.path = join(so.path, names[0])
		for _, name := range names {
			if left, ok := after(rest, name); ok && rest != "" {
				f.look(child, left, further, false)
			}
		}
		if len(so.steps) > 0 {
			further.skipped++
			f.look(child, rest, further, true)
		}
	})
	used := len(f.text) - len(rest)
	switch {
	case len(known) == 0 || used < f.used:
		return
	case used > f.used:
		f.used, f.where, f.next, f.deep = used, so.path, nil, nil
	}
	if skipping {
		f.deep = append(f.deep, known...)
	} else {
		f.where, f.next = so.path, append(f.next, known...)
	}
}

// children calls step with every part of a value and what it may be called: by its
// name first.
func children(v reflect.Value, step func(names []string, p part, child reflect.Value)) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			v = reflect.New(v.Type().Elem())
		}
		children(v.Elem(), step)
	case reflect.Struct:
		if isText(v.Type()) {
			return
		}
		for i := range v.NumField() {
			field := v.Type().Field(i)
			if names := strictjson.Names(field); len(names) > 0 && field.Tag.Get("json") != "" {
				step(names, part{field: i, kind: reflect.Struct}, v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			names := []string{fmt.Sprintf("[%d]", i)}
			if n := nameIn(v.Index(i)); n != "" {
				names = []string{n, names[0]}
			}
			step(names, part{index: i, kind: reflect.Slice}, v.Index(i))
		}
	case reflect.Map:
		keys := v.MapKeys()
		inOrder(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		for _, k := range keys {
			step([]string{k.String()}, part{key: k.String(), kind: reflect.Map}, v.MapIndex(k))
		}
	}
}

// after takes a part off the front of a text: all of it, or up to a dot or
// bracket.
func after(text, name string) (left string, ok bool) {
	left, ok = strings.CutPrefix(text, name)
	switch {
	case !ok:
		return "", false
	case left == "":
		return "", true
	case left[0] == '.':
		return left[1:], left != "."
	case left[0] == '[':
		return left, true
	}
	return "", false
}

// join writes a part behind a path.
func join(path, name string) string {
	if path == "" || strings.HasPrefix(name, "[") {
		return path + name
	}
	return path + "." + name
}

// nameIn is the name of a thing in a list.
func nameIn(v reflect.Value) string {
	if v.Kind() != reflect.Struct {
		return ""
	}
	if n := v.FieldByName("Name"); n.IsValid() && n.Kind() == reflect.String {
		return n.String()
	}
	return ""
}
