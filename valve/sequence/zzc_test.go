package sequence

import (
	"context"
	"fmt"
	"os"
	"testing"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/tubular/catalogue"
)

func TestWin(t *testing.T) {
	data, _ := os.ReadFile("../../examples/installation/plans/demo.json")
	p, _ := Read(data)
	_ = catalogue.Standard
	c, _ := p.compiled()
	k := &checker{compiled: c, ctx: context.Background(), programme: &Programme{}}
	k.After = k.rates
	k.walkNominal()
	k.peaks()
	k.out, _ = k.Prove(k.ctx, proof.Options{})
	for _, w := range k.held(13) {
		bad, _ := k.Window(k.ctx, k.out.Before[13], w.held)
		for _, b := range bad {
			fmt.Println(w.Planned, b.Least/6894.757, b.Greatest/6894.757, k.reason(b.Margin))
			for _, r := range b.Margin.Regions {
				fmt.Println("   by", r.By)
				for _, x := range r.Region.Rows() {
					fmt.Println("      ", x.C/6894.757, x.R, x.T)
				}
			}
		}
	}
}
