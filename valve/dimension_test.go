package valve

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/dimension"
)

func TestFormulasScale(t *testing.T) {
	pins := Pins{Count: 6, Strength: 4500 * unit.PoundForce, Tolerance: 0.05}
	dimension.Check(t, dimension.Free, ForceOn, psiBand(3000, 3600), 8*unit.SquareInch)
	dimension.Check(t, dimension.Free, Columns.Differential, columns(9.5, 8.8, 9000))
	dimension.Check(t, dimension.Free, Demand.Bound, Demand{Trigger: Trigger{Threshold: psiBand(2850, 3150)}, Columns: columns(9.5, 8.8, 9000), Fire: true})
	dimension.Check(t, dimension.Free, Trigger.MarginOf, Trigger{Threshold: psiBand(2850, 3150)}, 3000*unit.PSI)
	dimension.Check(t, dimension.Free, Pins.PressureOn, pins, 8*unit.SquareInch)
}
