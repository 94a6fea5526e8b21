package main

import "unicode/utf8"

// Sizes of a printed step in lines of its text, counted on paper: how many letters a
// line of each column holds, and how many lines a page does in each size of print.
const (
	leftLetters, seenLetters, factLetters = 58, 27, 36
	drawingLines, barLines, rowLines      = 24.0, 5.0, 1.75
	plainPage, densePage                  = 62.0, 73.0
)

// print is the size of print in which a step stands on one page: the class of its
// sheet, for which the style has the size.
func (x *sheet) print() string {
	height := 4 + rowLines*float64(1+max(len(x.Acts), 1)) + linesOf(x.Note, 110)
	switch height += max(x.left(), x.right()); {
	case height > densePage:
		return "denser"
	case height > plainPage:
		return "dense"
	}
	return ""
}

// left is the height of the column with windows, what must be seen and tests.
func (x *sheet) left() float64 {
	sum := 3.0
	for _, b := range x.Bars {
		sum += barLines + linesOf(b.None, leftLetters)
		for _, e := range b.Edges {
			sum += linesOf(e, leftLetters)
		}
	}
	for _, s := range x.Sights {
		seen := 0.0
		for _, w := range s.What {
			seen += linesOf(w, seenLetters)
		}
		sum += 0.7 + max(seen, linesOf(s.Else, seenLetters))
	}
	for _, s := range x.Stops {
		sum += linesOf(s, leftLetters)
	}
	for _, t := range x.TestLines {
		sum += 1 + linesOf(t, seenLetters)
	}
	return sum
}

// right is the height of the column with the drawing and what the step leaves behind.
func (x *sheet) right() float64 {
	sum := drawingLines + 2
	for _, f := range x.Facts {
		sum += linesOf(f.Text, factLetters)
	}
	for _, p := range x.Parts {
		sum += linesOf(p, factLetters)
	}
	for _, r := range x.Speeds {
		sum += 0.7 + linesOf(r, factLetters*2/3)
	}
	return sum
}

// linesOf is how many lines a text takes, about.
func linesOf(text string, letters int) float64 {
	return float64((utf8.RuneCountInString(text) + letters - 1) / letters)
}
