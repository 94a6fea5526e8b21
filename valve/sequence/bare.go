package sequence

// bare proves a plan and says what fails, and nothing else: where nothing does, the nominal
// values needn't be walked by themselves.
func (k *checker) bare() (*Programme, error) {
	k.progress.tell(0, "walking the plan")
	if k.warms() {
		if err := k.walkNominal(); err != nil {
			return nil, err
		}
		k.peaks()
	}
	if err := k.prove(); err != nil {
		return nil, err
	}
	p := k.programme
	p.Inputs, p.Branches = len(k.Network.Symbols), k.out.Worlds
	if len(k.out.Failures) > 0 || k.out.Open != nil {
		if k.nominal == nil {
			if err := k.walkNominal(); err != nil {
				return nil, err
			}
			k.peaks()
		}
		if err := k.results(); err != nil { // of which findings tell
			return nil, err
		}
		k.findings()
		p.Steps = nil
	}
	k.verdict()
	k.progress.tell(1, "done")
	return p, nil
}
