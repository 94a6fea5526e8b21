package unit

import (
	"strconv"
	"strings"
)

// vulgarFractions are the eighths that pipe sizes come in, as single letters.
var vulgarFractions = [...]struct{ letter, fraction string }{
	{"⅛", "1/8"}, {"¼", "1/4"}, {"⅜", "3/8"}, {"½", "1/2"}, {"⅝", "5/8"}, {"¾", "3/4"}, {"⅞", "7/8"},
}

// vulgar returns the length of the vulgar fraction that s begins with.
func vulgar(s string) int {
	for _, f := range vulgarFractions {
		if strings.HasPrefix(s, f.letter) {
			return len(f.letter)
		}
	}
	return 0
}

func hasFraction(s string) bool {
	for _, f := range vulgarFractions {
		if strings.Contains(s, f.letter) {
			return true
		}
	}
	return strings.Contains(s, "/")
}

// mixed reads "2-7/8", "2 7/8", "2⅞" and "7/8".
func mixed(s string) (v float64, problem string) {
	bad := strconv.Quote(s) + " is neither a decimal number nor a size such as 2-7/8"
	plain := s
	for _, f := range vulgarFractions {
		if whole, found := strings.CutSuffix(plain, f.letter); found {
			plain = strings.TrimLeft(strings.TrimRight(whole, "- ")+"-"+f.fraction, "-")
			break
		}
	}
	whole, fraction, found := strings.Cut(strings.ReplaceAll(plain, " ", "-"), "-")
	if !found {
		whole, fraction = "0", plain
	}
	above, below, _ := strings.Cut(fraction, "/")
	w, err1 := strconv.ParseUint(whole, 10, 16)
	n, err2 := strconv.ParseUint(above, 10, 16)
	d, err3 := strconv.ParseUint(below, 10, 16)
	if err1 != nil || err2 != nil || err3 != nil || n >= d {
		return 0, bad
	}
	return float64(w) + float64(n)/float64(d), ""
}
