package working

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"

	"completion.example/hydrostatics/unit"
)

// written is how a Value stands in JSON: as people read it, in SI, and what it is.
type written struct {
	Text     string  `json:"text"`
	SI       float64 `json:"si"`
	Quantity string  `json:"quantity,omitempty"`
}

// MarshalJSON writes the value as it is printed, in SI, and which quantity it is,
// such as {"text": "5000 psi", "si": 34473786.46584184, "quantity": "Pressure"}; a
// number and a time have no quantity. A value that isn't finite is an error.
func (v Value) MarshalJSON() ([]byte, error) {
	if math.IsNaN(v.si) || math.IsInf(v.si, 0) {
		return nil, fmt.Errorf("working: value is %s; must be finite", v.text)
	}
	w := written{Text: v.text, SI: v.si}
	if v.quantity != nil {
		w.Quantity = reflect.TypeOf(v.quantity).Name()
	}
	return json.Marshal(w)
}

// UnmarshalJSON reads what MarshalJSON writes. A quantity that isn't one of package
// unit is an error; without one, as files of before have it, the value reads back
// without its Quantity.
func (v *Value) UnmarshalJSON(text []byte) error {
	var w written
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	read := Value{si: w.SI, text: w.Text}
	if w.Quantity != "" {
		of, known := quantities[w.Quantity]
		if !known {
			return fmt.Errorf("working: quantity is %q; must be the name of a quantity of package unit, such as Pressure", w.Quantity)
		}
		read.quantity = of(w.SI)
	}
	*v = read
	return nil
}

// as makes a quantity of its value in SI.
func as[Q unit.Scalar](si float64) any { return Q(si) }

// quantities are made of their values in SI, by the names of their types.
var quantities = map[string]func(si float64) any{
	"Angle": as[unit.Angle], "Area": as[unit.Area], "Compressibility": as[unit.Compressibility],
	"Conductivity": as[unit.Conductivity], "Consistency": as[unit.Consistency], "Curvature": as[unit.Curvature],
	"Density": as[unit.Density], "Diffusivity": as[unit.Diffusivity], "Expansivity": as[unit.Expansivity],
	"FlowCoefficient": as[unit.FlowCoefficient], "FlowRate": as[unit.FlowRate], "Force": as[unit.Force],
	"Gradient": as[unit.Gradient], "HeatTransfer": as[unit.HeatTransfer], "Length": as[unit.Length], "Mass": as[unit.Mass],
	"MassRate": as[unit.MassRate], "Permeability": as[unit.Permeability], "Power": as[unit.Power],
	"Pressure": as[unit.Pressure], "ProductivityIndex": as[unit.ProductivityIndex], "SecondMoment": as[unit.SecondMoment],
	"ShearRate": as[unit.ShearRate], "SpecificHeat": as[unit.SpecificHeat],
	"Temperature":           func(kelvin float64) any { return unit.Kelvin(kelvin) },
	"TemperatureDifference": as[unit.TemperatureDifference], "TemperatureGradient": as[unit.TemperatureGradient],
	"Torque": as[unit.Torque], "Velocity": as[unit.Velocity], "Viscosity": as[unit.Viscosity], "Volume": as[unit.Volume],
	"WeightPerLength": as[unit.WeightPerLength],
}
