package validation

// Suites lists every file of cases, floor by floor.
func Suites() []Suite {
	return []Suite{
		// one line per file, lowest floor first
	}
}
