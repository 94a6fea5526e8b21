package fault_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/fault"
	"completion.example/tubular"
)

func TestListFlattensWhateverWrapsFaults(t *testing.T) {
	a, b := errors.New("is missing"), errors.New("stands twice")
	err := fmt.Errorf("plan.json: %w", errors.Join(
		fault.Fault{Path: "steps[3]", Err: errors.Join(fault.Fault{Path: "name", Err: a}, fault.Fault{Path: "[1].top", Err: b})},
		io.ErrUnexpectedEOF,
	))
	require.Equal(t, []fault.Fault{{Path: "steps[3].name", Err: a}, {Path: "steps[3][1].top", Err: b}, {Path: "", Err: io.ErrUnexpectedEOF}}, fault.List(err))
	require.Nil(t, fault.List(nil))
	require.Equal(t, []fault.Fault{{Err: a}}, fault.List(a))
	wrapped := fmt.Errorf("with words: %w", a)
	require.Equal(t, []fault.Fault{{Err: wrapped}}, fault.List(wrapped), "the words stay where no fault is inside")
}

func TestFaultIsTextAndJSON(t *testing.T) {
	f := fault.Fault{Path: "OD", Err: errors.New("is 0 in; must be above 0 in")}
	require.EqualError(t, f, "OD: is 0 in; must be above 0 in")
	require.EqualError(t, fault.Fault{Err: io.EOF}, "EOF")
	require.ErrorIs(t, fault.Fault{Err: io.EOF}, io.EOF)
	text, err := json.Marshal(f)
	require.NoError(t, err)
	require.JSONEq(t, `{"path": "OD", "fault": "is 0 in; must be above 0 in"}`, string(text))
	var back fault.Fault
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, f.Error(), back.Error())
	_, err = json.Marshal(fault.Fault{Path: "OD"})
	require.Error(t, err)
	require.Error(t, json.Unmarshal([]byte(`[]`), &back))
}

func TestAnyErrorAsFault(t *testing.T) {
	var f fault.Fault
	require.ErrorAs(t, fmt.Errorf("well 7: %w", fault.Fault{Path: "a", Err: io.EOF}), &f)
	require.Equal(t, "a", f.Path)
}

// Every fault of a pipe, each with its field.
func ExampleList() {
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 4 * unit.Inch, Weight: -1 * unit.PoundPerFoot, Material: tubular.Steel()}
	for _, f := range fault.List(pipe.Validate()) {
		fmt.Printf("%s %v\n", f.Path, f.Err)
	}
	// Output:
	// ID is 4 in; must be above 0 in and below the OD of 3.5 in
	// Weight is -1 lb/ft; must be at least 0 lb/ft
}

func ExampleJoin() {
	fmt.Println(fault.Join("steps[3]", "ramps[0].tubing"), fault.Join("sections", "[2].od"))
	// Output: steps[3].ramps[0].tubing sections[2].od
}
