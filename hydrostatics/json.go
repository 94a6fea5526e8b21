package hydrostatics

import "encoding/json"

// MarshalJSON writes the stations of a path, which UnmarshalJSON makes the same
// path of.
func (p *Path) MarshalJSON() ([]byte, error) { return json.Marshal(p.Stations()) }

// UnmarshalJSON reads a list of stations and prepares the path through them;
// errors are those of NewPath.
func (p *Path) UnmarshalJSON(text []byte) error {
	var stations []Station
	if err := json.Unmarshal(text, &stations); err != nil {
		return err
	}
	path, err := NewPath(stations)
	if err != nil {
		return err
	}
	*p = *path
	return nil
}

// MarshalJSON writes the points of a profile, which UnmarshalJSON makes the same
// profile of.
func (p *TemperatureProfile) MarshalJSON() ([]byte, error) { return json.Marshal(p.Points()) }

// UnmarshalJSON reads a list of points and prepares the profile through them;
// errors are those of NewTemperatureProfile.
func (p *TemperatureProfile) UnmarshalJSON(text []byte) error {
	var points []TemperaturePoint
	if err := json.Unmarshal(text, &points); err != nil {
		return err
	}
	profile, err := NewTemperatureProfile(points)
	if err != nil {
		return err
	}
	*p = *profile
	return nil
}
