package hydrostatics

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/fault"
)

func TestPathsAndProfilesReadBack(t *testing.T) {
	type well struct {
		Path        *Path               `json:"path"`
		Temperature *TemperatureProfile `json:"temperature"`
	}
	path, err := NewPath([]Station{{MD: 3000 * unit.Foot, Azimuth: 45 * unit.Degree}, {MD: 4000 * unit.Foot, Inclination: 20 * unit.Degree, Azimuth: 45 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 20 * unit.Degree, Azimuth: 45 * unit.Degree}})
	require.NoError(t, err)
	warm, err := NewTemperatureProfile([]TemperaturePoint{{0, unit.Fahrenheit(70)}, {9000 * unit.Foot, unit.Fahrenheit(200)}})
	require.NoError(t, err)
	text, err := json.Marshal(well{path, warm})
	require.NoError(t, err)
	require.Contains(t, string(text), `"path":[{"md":"0 ft","inclination":"0 deg","azimuth":"45 deg"},{"md":"3000 ft"`)
	var back well
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, path, back.Path)
	require.Equal(t, warm, back.Temperature)

	err = json.Unmarshal([]byte(`{"path": [{"md": "100 ft"}, {"md": "50 ft"}]}`), &back)
	require.Equal(t, "stations[1].MD", fault.List(err)[0].Path)
	require.Error(t, json.Unmarshal([]byte(`{"path": 5}`), &back))
	require.Error(t, json.Unmarshal([]byte(`{"temperature": []}`), &back))
	require.Error(t, json.Unmarshal([]byte(`{"temperature": 5}`), &back))
}
