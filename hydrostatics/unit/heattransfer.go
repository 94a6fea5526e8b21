package unit

// HeatTransfer is heat rate per area and temperature difference, in W/(m²·K).
// The zero value is zero.
type HeatTransfer float64

// Units of heat transfer coefficient: multiply a number by one, or divide by one with In.
const (
	WattPerSquareMetreKelvin       HeatTransfer = 1                                              // W/m2/K
	BtuPerHourSquareFootFahrenheit HeatTransfer = 4186.8 * 0.45359237 / 3600 / (0.3048 * 0.3048) // Btu/h/ft2/degF
)

var heatTransferUnits = table{
	quantity: "heat transfer coefficient",
	symbols: []symbol{
		{"W/m2/K", float64(WattPerSquareMetreKelvin)},
		{"Btu/h/ft2/degF", float64(BtuPerHourSquareFootFahrenheit)},
	},
	trade: []trade{
		{"Btu/h/ft2/degF", float64(BtuPerHourSquareFootFahrenheit), 0},
	},
}

// In returns h counted in u, for example h.In(unit.BtuPerHourSquareFootFahrenheit).
func (h HeatTransfer) In(u HeatTransfer) float64 { return float64(h / u) }

// String writes h without loss, in the trade's unit.
func (h HeatTransfer) String() string { return heatTransferUnits.format(float64(h)) }

// Rounded writes h in the trade's unit to that many significant digits; whole
// units are never rounded away.
func (h HeatTransfer) Rounded(digits int) string {
	return heatTransferUnits.rounded(float64(h), digits)
}

// MarshalText writes h without loss; NaN and infinities are errors.
func (h HeatTransfer) MarshalText() ([]byte, error) { return heatTransferUnits.marshal(float64(h)) }

// UnmarshalText reads a number with its unit; see the package doc.
func (h *HeatTransfer) UnmarshalText(text []byte) error {
	x, err := heatTransferUnits.parse(string(text))
	if err != nil {
		return err
	}
	*h = HeatTransfer(x)
	return nil
}
