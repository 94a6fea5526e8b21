package column

import (
	"completion.example/hydrostatics"
	"completion.example/internal/calculator"
)

// table lists both ends of every layer.
func table(c *hydrostatics.Column) ([]calculator.Table, error) {
	t := calculator.Table{Name: "Layers", Header: []string{"TVD", "pressure", "density above", "mean gradient of the layer"}}
	for i, l := range c.Layers() {
		top, err := c.At(l.TopTVD)
		if err != nil {
			return nil, err
		}
		bottom, err := c.At(l.BottomTVD)
		if err != nil {
			return nil, err
		}
		if i == 0 {
			t.Rows = append(t.Rows, []any{l.TopTVD, top, nil, nil})
		}
		rho, err := c.Density(l.BottomTVD)
		if err != nil {
			return nil, err
		}
		t.Rows = append(t.Rows, []any{l.BottomTVD, bottom, rho, hydrostatics.GradientOf(bottom-top, l.BottomTVD-l.TopTVD)})
	}
	return []calculator.Table{t}, nil
}
