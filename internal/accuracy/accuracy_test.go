package accuracy

import "testing"

// Every formula keeps its digits, and its limit isn't far above what it does.
func TestAccuracy(t *testing.T) {
	for _, r := range Run(200) {
		if !r.Met() {
			t.Errorf("%v", r)
		}
		if !r.loose && r.Worst < r.Limit/10 {
			t.Errorf("%v: the limit says nothing", r)
		}
	}
}
