package validation

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

const surveyFile = "hydrostatics-survey.csv"

var surveySuite = Suite{
	File: surveyFile,
	Quantities: map[string]Evaluator{
		"TVD change":      course(func(c hydrostatics.Course) any { return c.TVD }),
		"north change":    course(func(c hydrostatics.Course) any { return c.North }),
		"east change":     course(func(c hydrostatics.Course) any { return c.East }),
		"dogleg severity": course(func(c hydrostatics.Course) any { return c.DoglegSeverity }),
		"ratio factor":    course(func(c hydrostatics.Course) any { return c.RatioFactor }),
		"surveyed TVD":    surveyed(func(at hydrostatics.Position) any { return at.TVD }),
		"surveyed north":  surveyed(func(at hydrostatics.Position) any { return at.North }),
		"surveyed east":   surveyed(func(at hydrostatics.Position) any { return at.East }),
	},
}

func readCourse(in *published.Inputs) (from, to hydrostatics.Station) {
	in.Read("md1", &from.MD)
	in.Read("inc1", &from.Inclination)
	in.Read("azi1", &from.Azimuth)
	in.Read("md2", &to.MD)
	in.Read("inc2", &to.Inclination)
	in.Read("azi2", &to.Azimuth)
	return from, to
}

func course(answer func(hydrostatics.Course) any) Evaluator {
	return func(in *published.Inputs) (any, error) {
		from, to := readCourse(in)
		return answer(hydrostatics.CourseBetween(from, to)), nil
	}
}

// surveyed takes the whole survey, whose stations are those of its courses.
func surveyed(answer func(hydrostatics.Position) any) Evaluator {
	return func(in *published.Inputs) (any, error) {
		var survey string
		var md unit.Length
		in.Read("survey", &survey)
		in.Read("md", &md)
		stations, err := stationsOf(survey)
		if err != nil {
			return nil, err
		}
		path, err := hydrostatics.NewPath(stations)
		if err != nil {
			return nil, err
		}
		at, err := path.At(md)
		return answer(at), err
	}
}

func stationsOf(source string) ([]hydrostatics.Station, error) {
	cases, err := published.Read(surveyFile)
	if err != nil {
		return nil, err
	}
	var stations []hydrostatics.Station
	for _, c := range cases {
		if c.Quantity != "TVD change" || !strings.Contains(c.Source, source) {
			continue
		}
		in := published.NewInputs(c.Inputs)
		from, to := readCourse(in)
		if err := in.Err(); err != nil {
			return nil, err
		}
		if len(stations) == 0 {
			stations = append(stations, from)
		}
		if last := stations[len(stations)-1]; last != from {
			return nil, fmt.Errorf("%v doesn't begin where the course before it ends", c)
		}
		stations = append(stations, to)
	}
	return stations, nil
}
