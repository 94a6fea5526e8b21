package sequence

// margins writes the least of every limit.
func (k *checker) margins() {}

// windowCure says what surface pressure mends a finding.
func (k *checker) windowCure(m any) string { return "" }

func (p *Plan) unchecked(c *compiled) []string { return nil }
