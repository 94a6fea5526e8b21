package sequence

// margins writes the least of every limit.
func (k *checker) margins() {}

func (p *Plan) unchecked(c *compiled) []string { return nil }
