package main

import (
	"context"
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// draws say how a plan's bands are drawn from: how many times, from which seed,
// and how far what has no band in the plan strays.
type draws struct {
	Samples     int
	Seed        uint64
	Density     float64
	Formation   unit.Pressure
	Gauge       unit.Pressure
	Temperature unit.TemperatureDifference
}

// risk is how often a plan goes wrong.
type risk struct {
	Samples int       `json:"samples"`
	Seed    uint64    `json:"seed"`
	Fails   share     `json:"fails"`
	Events  []outcome `json:"events"`
}

// share is a probability with its interval of 95 %.
type share struct {
	Value    float64 `json:"value"`
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
}

func (s share) String() string {
	return fmt.Sprintf("%.2f %% (95 %% sure between %.2f and %.2f %%)", 100*s.Value, 100*s.Least, 100*s.Greatest)
}

// outcome is one way in which the draws failed.
type outcome struct {
	share
	Step   string `json:"step"`
	Action string `json:"action"`
	Kind   string `json:"kind"`
}

// sample draws the plan's values. The package doesn't draw yet.
func sample(_ context.Context, _ *sequence.Plan, d draws) (*risk, error) {
	if d.Samples < 0 {
		return nil, fmt.Errorf("samples is %d; it must be at least 1", d.Samples)
	}
	return nil, errors.New("-samples: the draws are being rebuilt on the new engine; the verdict covers every value inside the bands")
}
