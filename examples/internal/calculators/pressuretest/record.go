package pressuretest

import (
	"io"
	"os"
	"strings"

	"completion.example/fluid/confined"
)

func names() (all []string) {
	for _, c := range confined.Presets() {
		all = append(all, c.Name)
	}
	return all
}

func record(file string) (confined.Record, error) {
	var in io.Reader = strings.NewReader(demo)
	if file != "" {
		f, err := os.Open(file)
		if err != nil {
			return nil, err
		}
		defer func() { _ = f.Close() }()
		in = f
	}
	return confined.ReadRecord(in)
}
