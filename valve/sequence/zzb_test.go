package sequence

import (
	"context"
	"os"
	"testing"
)

func BenchmarkVerdict(b *testing.B) {
	data, _ := os.ReadFile("../../examples/installation/plans/demo.json")
	p, err := Read(data)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Check(context.Background(), p, Options{Only: VerdictOnly}); err != nil {
			b.Fatal(err)
		}
	}
}
