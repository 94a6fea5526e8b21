package valve_test

import (
	"encoding/json"
	"testing"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"github.com/stretchr/testify/assert"
)

// Bad input is refused with words that say what is wrong and what would do.
func TestWordsOfRefusals(t *testing.T) {
	_, err := valve.SafetyValve{}.FailSafe(0, nil)
	assert.ErrorContains(t, err, "cases: is empty; must be one case or more to be fail safe in")
	_, err = valve.IsolationValve{Kind: valve.OpensUnderPressure}.BleedOff(valve.Columns{}, valve.SurfaceRange{})
	assert.ErrorContains(t, err, "which has no bleed-off differential; must be another")
	var s valve.TriggerState
	err = json.Unmarshal([]byte(`{"earliest": {"links": 0}, "latest": {"links": 1}, "lowest": "2 psi", "highest": "1 psi"}`), &s)
	assert.ErrorContains(t, err, "earliest.links: is 0; must be 1 or more, as many as the latest device's")
	assert.ErrorContains(t, err, "lowest: is 2 psi; must be at most the highest, 1 psi")
	g := valve.GasLeak{Duration: time.Hour, Volume: 1e-300, Temperature: unit.Kelvin(300), Standard: valve.StandardSI()}
	_, err = g.RiseAt(1e300)
	assert.ErrorContains(t, err, "must make a finite rise")
	_, err = valve.GasLeak{}.RiseAt(1)
	assert.ErrorContains(t, err, "must be above 0s")
	assert.ErrorContains(t, err, "must be above 100 K and below 1000 K")
	assert.ErrorContains(t, err, "must be above 200 K and below 400 K")
	assert.ErrorContains(t, err, "must be above 50 kPa and below 200 kPa, absolute")
	_, err = valve.PinCounts(nil, unit.Exactly(unit.PoundForce))
	assert.ErrorContains(t, err, "stock: is empty; must be one kind of pins or more")
	_, err = valve.Correlation(9).MarshalText()
	assert.ErrorContains(t, err, "pin correlation is 9; must be one of lot and independent")
	assert.ErrorContains(t, new(valve.Correlation).UnmarshalText([]byte("some")), `pin correlation is "some"; must be one of lot or independent`)
	assert.ErrorContains(t, valve.Pins{Correlation: 9}.Validate(), "must be lot or independent")
	assert.ErrorContains(t, valve.Row{}.Validate(), "row is empty; must be one trigger or more")
	assert.ErrorContains(t, valve.Trigger{Direction: 9}.Validate(), "must be rising or falling")
}
