package friction

import (
	"testing"

	"completion.example/fluid/flow"
)

// FuzzReadings: what is read is written back as it reads, and a fit of it neither
// hangs nor answers with what is no rheology.
func FuzzReadings(f *testing.F) {
	f.Add("600=53, 300=34")
	f.Add("600=NaN, 300=1e400")
	f.Add("=,,=")
	f.Fuzz(func(t *testing.T, text string) {
		var r, back readings
		if r.UnmarshalText([]byte(text)) != nil {
			return
		}
		out, err := r.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := back.UnmarshalText(out); err != nil || len(back) != len(r) {
			t.Fatalf("%q was written %q and read as %v, %v", text, out, back, err)
		}
		if len(r) > 20 {
			return
		}
		if fit, err := flow.Fit(flow.ModelHerschelBulkley, r); err == nil {
			if err := fit.Rheology.Validate(); err != nil {
				t.Fatalf("%q: %v", text, err)
			}
		}
	})
}
