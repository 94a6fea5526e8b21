package sequence

import (
	"context"
	"fmt"
	"os"
	"testing"
	"time"
)

func TestTry(t *testing.T) {
	data, _ := os.ReadFile("../../examples/installation/plans/" + os.Getenv("PLAN"))
	p, err := Read(data)
	if err != nil {
		t.Fatal(err)
	}
	only := VerdictOnly
	if os.Getenv("ALL") != "" {
		only = Everything
	}
	t0 := time.Now()
	r, err := Check(context.Background(), p, Options{Only: only})
	if err != nil {
		t.Fatal(err)
	}
	fmt.Println(time.Since(t0), r.Verdict, r.Open, r.Branches, r.Inputs)
	for _, f := range r.Findings {
		fmt.Printf("%s | %s | %s\n   %s\n   %s\n   assumed %s\n   cure %s follows=%s\n", f.Step, f.Kind, f.Device, f.Says, f.Numbers, f.Assumed, f.Cure, f.Follows)
	}
	if os.Getenv("ALL") != "" {
		for _, s := range r.Steps {
			fmt.Println(s.Name)
			for _, w := range s.Windows {
				fmt.Println("    ", w.name(), w.Planned.Rounded(5), w.Inside, w.Words())
				for _, x := range w.Intervals {
					fmt.Println("           below", x.Below, "| above", x.Above)
				}
			}
		}
	}
}

func TestSample(t *testing.T) {
	data, _ := os.ReadFile("../../examples/installation/plans/" + os.Getenv("PLAN"))
	p, err := Read(data)
	if err != nil {
		t.Fatal(err)
	}
	t0 := time.Now()
	r, err := Sample(context.Background(), p, Uncertainty{Samples: 2000, Seed: 7})
	fmt.Println(time.Since(t0), err, r.Fails, r.Events, r.Inputs, r.Unwalked)
}
