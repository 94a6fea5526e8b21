package column

import (
	"completion.example/hydrostatics"
	"completion.example/internal/calculator"
)

// table lists both ends of every layer.
func table(c *hydrostatics.Column) ([]calculator.Table, error) {
	t := calculator.Table{Name: "Layers", Header: []string{"TVD", "pressure", "density above", "mean gradient of the layer"}}
	for i, l := range c.Layers() {
		top, err := c.At(l.Top)
		if err != nil {
			return nil, err
		}
		bottom, err := c.At(l.Bottom)
		if err != nil {
			return nil, err
		}
		if i == 0 {
			t.Rows = append(t.Rows, []any{l.Top, top, nil, nil})
		}
		rho, err := c.Density(l.Bottom)
		if err != nil {
			return nil, err
		}
		t.Rows = append(t.Rows, []any{l.Bottom, bottom, rho, hydrostatics.GradientOf(bottom-top, l.Bottom-l.Top)})
	}
	return []calculator.Table{t}, nil
}
