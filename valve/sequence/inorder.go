package sequence

import "sort"

// inOrder sorts, and leaves what is equal as it stands. It is one piece of code for all
// types: slices.SortStableFunc is made anew for each, which is some 7 kB of the program
// in the page.
func inOrder[T any](all []T, compare func(a, b T) int) {
	sort.SliceStable(all, func(i, j int) bool { return compare(all[i], all[j]) < 0 })
}
