package sequence_test

import (
	"completion.example/valve/sequence"
	"context"
	"fmt"
	"testing"
	"time"
)

func TestZZ(t *testing.T) {
	for _, n := range []int{30} {
		for name, p := range map[string]*sequence.Plan{"own": ownChambers(n), "series": inSeries(n), "counters": countersInDoubt(n)} {
			t0 := time.Now()
			r, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly, Budget: 0})
			if err != nil {
				t.Fatal(err)
			}
			fmt.Println(n, name, r.Verdict, time.Since(t0), r.Open)
		}
	}
}
