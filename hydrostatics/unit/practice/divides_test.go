package practice_test

import (
	"testing"

	"completion.example/hydrostatics/unit/practice"
	"completion.example/internal/precise"
)

// A factor that is divided by, and one that is multiplied with, as written.
func TestFactorAsWritten(t *testing.T) {
	precise.Equal(t, practice.Factor{Written: "25.4", Divides: true}.Value(), "1/25.4", nil)
	precise.Equal(t, practice.Factor{Written: "0.052"}.Convert(3), "0.052*3", nil)
}
