package calculator

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Width is how many columns a line of text has at most, unless a single word is
// longer.
const Width = 110

// Whole keeps numbers and units in one line, and an arrow with what stands before
// it.
func Whole(text string) string {
	var b strings.Builder
	done := 0
	for i := 1; i+1 < len(text); i++ {
		if text[i] == ' ' && text[i-1] >= '0' && text[i-1] <= '9' && unitStarts(text[i+1]) {
			b.WriteString(text[done:i] + "\u00a0")
			done = i + 1
		}
	}
	return strings.ReplaceAll(b.String()+text[done:], " →", "\u00a0→")
}

func unitStarts(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c == '%' }

// Wrap breaks a text into lines of at most n columns, never between a number and
// its unit.
func Wrap(text string, n int) []string {
	var all []string
	now := ""
	for _, word := range words(text, n) {
		switch {
		case now == "":
			now = word
		case wide(now)+1+wide(word) > n:
			all = append(all, now)
			now = word
		default:
			now += " " + word
		}
	}
	all = append(all, now)
	for i := range all {
		all[i] = strings.ReplaceAll(all[i], "\u00a0", " ")
	}
	return all
}

// words are what a line may break between. A formula longer than a line is one word;
// it breaks behind an operator.
func words(text string, n int) (all []string) {
	for _, word := range strings.Split(Whole(text), " ") {
		for wide(word) > n {
			at := strings.LastIndexAny(string([]rune(word)[:n]), "*/+,")
			if at < n/3 {
				break
			}
			all = append(all, word[:at+1])
			word = word[at+1:]
		}
		all = append(all, word)
	}
	return all
}

func wide(text string) int { return utf8.RuneCountInString(text) }

// prose writes a text that goes on under its beginning, behind a head.
func prose(w *strings.Builder, head, hang, text string) {
	if wide(head)+wide(text) <= Width {
		w.WriteString(head + text + "\n")
		return
	}
	for _, line := range Wrap(text, Width-max(wide(head), wide(hang))) {
		w.WriteString(strings.TrimRight(head+line, " ") + "\n")
		head = hang
	}
}

// grid writes rows of cells in columns where they are too wide for a line: the cells
// that take most room go on below.
func grid(w *strings.Builder, cells [][]string) {
	const gap = 2
	var widths, least []int
	for _, row := range cells {
		for i, c := range row {
			if i == len(widths) {
				widths, least = append(widths, 0), append(least, 1)
			}
			widths[i] = max(widths[i], wide(c))
			for _, word := range words(c, Width/2) {
				least[i] = max(least[i], wide(word))
			}
		}
	}
	for total(widths, gap) > Width-gap {
		k := -1
		for i := range widths {
			if widths[i] > least[i] && (k < 0 || widths[i] > widths[k]) {
				k = i
			}
		}
		if k < 0 {
			break
		}
		widths[k]--
	}
	for _, row := range cells {
		lines := make([][]string, len(row))
		high := 1
		for i, c := range row {
			lines[i] = Wrap(c, widths[i])
			high = max(high, len(lines[i]))
		}
		for n := range high {
			text := ""
			for i := range row {
				cell := ""
				if n < len(lines[i]) {
					cell = lines[i][n]
				}
				text += strings.Repeat(" ", gap) + cell + strings.Repeat(" ", max(widths[i]-wide(cell), 0))
			}
			w.WriteString(strings.TrimRight(text, " ") + "\n")
		}
	}
}

func total(widths []int, gap int) int {
	sum := gap * (len(widths) - 1)
	for _, x := range widths {
		sum += x
	}
	return sum
}

// fits tells whether no line of a text is too long.
func fits(text string) bool {
	return !slices.ContainsFunc(strings.Split(text, "\n"), func(line string) bool { return wide(line) > Width })
}
