package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// What can't be is said with its place.
func TestTwoStringsAreValidated(t *testing.T) {
	says := func(change func(p *sequence.Plan)) string {
		p := twoStrings()
		change(p)
		err := p.Validate()
		require.Error(t, err)
		return err.Error()
	}
	require.Contains(t, says(func(p *sequence.Plan) { p.Devices[0].On = "liner" }), `devices[0].on: is "liner"; there is "outer_string"`)
	require.Contains(t, says(func(p *sequence.Plan) { p.OuterString = nil }), `devices[0].on: is "outer_string", which the plan hasn't got`)
	require.Contains(t, says(func(p *sequence.Plan) { p.String.Around = []string{"annulus"} }), `string.around: hasn't got "between the strings"`)
	require.Contains(t, says(func(p *sequence.Plan) { p.Steps[0].On = sequence.OnOuterString }), "says which string is pulled or lands")
	require.Contains(t, says(func(p *sequence.Plan) { p.OuterString.Sections[0].Pipe.Size = 2.875 * unit.Inch }), "outer_string.sections[0].pipe")
	require.Contains(t, says(func(p *sequence.Plan) { p.OuterString.Temperatures = map[string]string{"cooled": "icy"} }), `outer_string.temperatures.cooled: no temperature "icy"`)
	require.Contains(t, says(func(p *sequence.Plan) {
		p.String.Sections[0].Pipe = sequence.Pipe{Size: 5 * unit.Inch, Weight: 15 * unit.PoundPerFoot, Grade: "L80"}
	}), "string.sections[0].pipe: is 5 in wide")
}
