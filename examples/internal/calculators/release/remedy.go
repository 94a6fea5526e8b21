package release

import (
	"errors"
	"flag"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
)

// remedy is what has been tried on a joint that doesn't part, and where the pipe
// can be cut.
type remedy struct {
	tried             unit.Force
	free              unit.Length
	cutTop, cutBottom unit.Length
	cutPull           unit.Force
}

func (x *remedy) setup(flags *flag.FlagSet) {
	flags.TextVar(&x.tried, "tried", 132*unit.Kilopound, "highest reading pulled so far without parting")
	flags.TextVar(&x.cutTop, "cut-top", 8960*unit.Foot, "top of the pipe that can be cut")
	flags.TextVar(&x.cutBottom, "cut-bottom", 8985*unit.Foot, "bottom of the pipe that can be cut")
	flags.TextVar(&x.cutPull, "cut-pull", 10*unit.Kilopound, "pull wanted at the cut, above what hangs free there")
	flags.TextVar(&x.free, "free", unit.Length(0), "depth to which the string is known to be free; zero for the joint")
}

// notParted asks what is left to do if the joint has not parted.
func (x remedy) notParted(a *calculator.Answer, r packer.Release) error {
	o, err := packer.NotParted{
		Release: r, Tried: x.tried, FreeMD: x.free, CutPull: x.cutPull,
		Intervals: []packer.CutInterval{{Name: "pipe that can be cut", TopMD: x.cutTop, BottomMD: x.cutBottom}},
	}.Options()
	if err != nil {
		return err
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "tried so far put on the joint", Value: o.Joint},
		calculator.Result{Name: "the reading may still rise by", Value: o.Higher})
	if o.Parts == packer.Acted {
		a.Notes = append(a.Notes, "what was tried should have parted the strongest pins: the pull does not reach the joint")
	}
	if o.Pressure > 0 {
		a.Results = append(a.Results,
			calculator.Result{Name: "tubing pressure to add that parts the strongest pins within the shares", Value: o.Pressure},
			calculator.Result{Name: "reading to pull with it", Value: o.PressureReading})
	}
	if o.MostParts != packer.Acted && !o.PressureAvailable {
		a.Notes = append(a.Notes, "tubing pressure does not help: the joint's seal is no wider than the bore of the pipe that limits the pull")
	}
	if errors.Is(o.NoCut, packer.ErrNowhereToCut) {
		a.Notes = append(a.Notes, o.NoCut.Error())
		return nil
	}
	a.Results = append(a.Results,
		calculator.Result{Name: "else cut at", Value: o.Cut.MD},
		calculator.Result{Name: "reading to hold for the cut", Value: o.Cut.Reading},
		calculator.Result{Name: "reading after the cut", Value: o.Cut.After},
		calculator.Result{Name: "pipe left above the joint", Value: o.Cut.Fish})
	return nil
}
