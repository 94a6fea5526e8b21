package prose

import (
	"fmt"
	"html"
	"strings"
	"unicode"
)

// formula turns the part of TeX that the lessons use into MathML, which browsers
// draw without help. A command that it doesn't know is an error.
func formula(tex string, display bool) (string, error) {
	t := &texReader{rest: tex}
	body := t.row("")
	if t.err == nil && t.rest != "" {
		t.err = fmt.Errorf("formula $%s$: %q is left over", tex, t.rest)
	}
	if t.err != nil {
		return "", t.err
	}
	if display {
		return `<math display="block">` + body + `</math>`, nil
	}
	return `<math>` + body + `</math>`, nil
}

// texReader reads a formula from its left.
type texReader struct {
	rest string
	err  error
}

// signs are commands that stand for one sign; the second string is its element.
var signs = map[string][2]string{
	"alpha": {"α", "mi"}, "beta": {"β", "mi"}, "gamma": {"γ", "mi"}, "delta": {"δ", "mi"}, "Delta": {"Δ", "mi"}, "epsilon": {"ε", "mi"},
	"kappa": {"κ", "mi"}, "lambda": {"λ", "mi"}, "mu": {"μ", "mi"}, "nu": {"ν", "mi"}, "pi": {"π", "mi"}, "rho": {"ρ", "mi"},
	"sigma": {"σ", "mi"}, "theta": {"θ", "mi"}, "Sigma": {"Σ", "mi"}, "infty": {"∞", "mi"}, "partial": {"∂", "mi"},
	"ln": {"ln", "mi"}, "exp": {"exp", "mi"}, "sin": {"sin", "mi"}, "cos": {"cos", "mi"}, "min": {"min", "mi"}, "max": {"max", "mi"},
	"cdot": {"·", "mo"}, "times": {"×", "mo"}, "le": {"≤", "mo"}, "ge": {"≥", "mo"}, "ne": {"≠", "mo"}, "approx": {"≈", "mo"},
	"pm": {"±", "mo"}, "to": {"→", "mo"}, "sum": {"∑", "mo"}, "int": {"∫", "mo"}, "circ": {"°", "mo"}, "dots": {"…", "mo"}, "ll": {"≪", "mo"},
	"%": {"%", "mo"}, "{": {"{", "mo"}, "}": {"}", "mo"},
}

// row reads until the given end, or to the end of all.
func (t *texReader) row(end string) string {
	var out strings.Builder
	for t.err == nil {
		t.rest = strings.TrimLeft(t.rest, " \n")
		if t.rest == "" {
			if end != "" {
				t.err = fmt.Errorf("formula: %q is missing", end)
			}
			break
		}
		if end != "" && strings.HasPrefix(t.rest, end) {
			t.rest = t.rest[len(end):]
			break
		}
		if end == "" && t.rest[0] == '}' {
			break
		}
		out.WriteString(t.scripted())
	}
	return "<mrow>" + out.String() + "</mrow>"
}

// scripted reads one thing with what stands below and above it.
func (t *texReader) scripted() string {
	base := t.atom()
	var below, above string
	for t.err == nil {
		t.rest = strings.TrimLeft(t.rest, " \n")
		switch {
		case strings.HasPrefix(t.rest, "_"):
			t.rest = t.rest[1:]
			below = t.atom()
		case strings.HasPrefix(t.rest, "^"):
			t.rest = t.rest[1:]
			above = t.atom()
		default:
			switch {
			case below != "" && above != "":
				return "<msubsup>" + base + below + above + "</msubsup>"
			case below != "":
				return "<msub>" + base + below + "</msub>"
			case above != "":
				return "<msup>" + base + above + "</msup>"
			}
			return base
		}
	}
	return ""
}

// atom reads one sign, number, group or command.
func (t *texReader) atom() string {
	t.rest = strings.TrimLeft(t.rest, " \n")
	if t.rest == "" {
		t.err = fmt.Errorf("formula: ends too early")
		return ""
	}
	r := []rune(t.rest)[0]
	switch {
	case r == '\\':
		return t.command()
	case r == '{':
		t.rest = t.rest[1:]
		return t.row("}")
	case unicode.IsDigit(r):
		n := 0
		for n < len(t.rest) && (unicode.IsDigit(rune(t.rest[n])) || strings.ContainsRune(".,", rune(t.rest[n])) && n+1 < len(t.rest) && unicode.IsDigit(rune(t.rest[n+1]))) {
			n++
		}
		number := t.rest[:n]
		t.rest = t.rest[n:]
		return "<mn>" + number + "</mn>"
	case unicode.IsLetter(r):
		t.rest = t.rest[len(string(r)):]
		return "<mi>" + string(r) + "</mi>"
	}
	t.rest = t.rest[len(string(r)):]
	sign := string(r)
	if r == '-' {
		sign = "−"
	}
	stretch := ""
	if strings.ContainsRune("()[]|", r) {
		stretch = ` stretchy="false"`
	}
	return "<mo" + stretch + ">" + html.EscapeString(sign) + "</mo>"
}

func (t *texReader) command() string {
	t.rest = t.rest[1:]
	n := 0
	for n < len(t.rest) && unicode.IsLetter(rune(t.rest[n])) {
		n++
	}
	if n == 0 && t.rest != "" {
		n = 1
	}
	name := t.rest[:n]
	t.rest = t.rest[n:]
	switch name {
	case "frac":
		above := t.atom()
		return "<mfrac>" + above + t.atom() + "</mfrac>"
	case "sqrt":
		return "<msqrt>" + t.atom() + "</msqrt>"
	case "bar":
		return "<mover>" + t.atom() + `<mo>¯</mo></mover>`
	case "text", "mathrm":
		words, rest, ok := strings.Cut(strings.TrimPrefix(t.rest, "{"), "}")
		if !ok {
			t.err = fmt.Errorf("formula: \\%s without its end", name)
		}
		t.rest = rest
		return "<mtext>" + html.EscapeString(strings.ReplaceAll(words, " ", "\u00a0")) + "</mtext>"
	case "left":
		open := t.fence()
		inside := t.row(`\right`)
		return "<mrow><mo>" + open + "</mo>" + inside + "<mo>" + t.fence() + "</mo></mrow>"
	case ",", ";", "quad":
		return map[string]string{",": `<mspace width="0.17em"/>`, ";": `<mspace width="0.28em"/>`, "quad": `<mspace width="1em"/>`}[name]
	}
	if s, ok := signs[name]; ok {
		return "<" + s[1] + ">" + s[0] + "</" + s[1] + ">"
	}
	t.err = fmt.Errorf("formula: \\%s isn't known here", name)
	return ""
}

// fence reads the bracket after \left or \right.
func (t *texReader) fence() string {
	if t.rest == "" {
		t.err = fmt.Errorf("formula: \\left or \\right without a bracket")
		return ""
	}
	s := t.rest[:1]
	t.rest = t.rest[1:]
	if s == "." {
		return ""
	}
	return s
}
