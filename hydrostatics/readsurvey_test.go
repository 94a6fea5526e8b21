package hydrostatics

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/fault"
)

func TestReadSurveyInEveryFormOfHeader(t *testing.T) {
	want := []Station{{MD: 1000 * unit.Foot, Inclination: 2.5 * unit.Degree, Azimuth: 310 * unit.Degree}, {MD: 1100 * unit.Foot, Inclination: 3 * unit.Degree, Azimuth: 312 * unit.Degree}}
	for _, text := range []string{
		"MD,inclination,azimuth\n1000 ft,2.5 deg,310 deg\n1100 ft,3 deg,312 deg\n",
		"\ufeffMD/ft,Inc/deg,Azi/deg\n1000,2.5,310\n1100,3,312\n",
		"# a comment\nAzimuth (deg), Measured Depth [ft], TVD (ft), INCL (deg), N/S, DLS (deg/100ft)\n310,1000,999,2.5,0,0\n312,1100,1098,3,5,0.5\n",
	} {
		got, err := ReadSurvey(strings.NewReader(text))
		require.NoError(t, err, text)
		require.Equal(t, want, got, text)
	}
}

func TestReadSurveyTellsEveryFault(t *testing.T) {
	for text, want := range map[string][]string{
		"":                                     {"line 1: is missing"},
		"MD,inc\n1 ft,2 deg\n":                 {"line 1: has no column azimuth"},
		"MD,inc,azi,gamma\n":                   {`line 1: has a column "gamma"`},
		"MD,inc,azi,azimuth\n":                 {"line 1: has the column azimuth twice"},
		"MD/ft,inc,azi\n1,2,x\n3 ft,4 deg,5\n": {"line 2.inclination", "line 2.azimuth", "line 3.MD", "line 3.azimuth"},
		"MD,inc,azi\n1 ft,2 deg\n":             {"wrong number of fields"},
	} {
		got, err := ReadSurvey(strings.NewReader(text))
		require.Nil(t, got)
		for _, w := range want {
			require.ErrorContains(t, err, w, text)
		}
	}
	_, err := ReadSurvey(strings.NewReader("MD,inc,azi\n" + strings.Repeat("a,b,c\n", 1000)))
	require.LessOrEqual(t, len(fault.List(err)), 52)
}

func FuzzReadSurvey(f *testing.F) {
	f.Add("MD/ft,inc/deg,azi/deg\n1000,2.5,310\n1100,3,312\n")
	f.Add("\"\n,,\n")
	f.Add("MD (m),azimuth,inclination [rad]\n1,2 deg,0.1\n")
	f.Fuzz(func(t *testing.T, text string) {
		stations, err := ReadSurvey(strings.NewReader(text))
		if err != nil {
			require.Empty(t, stations)
			return
		}
		if p, err := NewPath(stations); err == nil {
			require.GreaterOrEqual(t, len(p.Stations()), len(stations), "a station is lost")
		}
	})
}

func ExampleReadSurvey() {
	stations, err := ReadSurvey(strings.NewReader("MD/ft,inclination/deg,azimuth/deg\n3000,0,0\n4000,20,45\n9000,20,45\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	path, err := NewPath(stations)
	if err != nil {
		fmt.Println(err)
		return
	}
	tvd, err := path.TVD(9000 * unit.Foot)
	fmt.Println(tvd.Rounded(5), err)
	// Output: 8678.3 ft <nil>
}
