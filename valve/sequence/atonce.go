package sequence

import (
	"runtime"
	"sync"
)

// atOnce calls f for 0 to n-1 on so many cores, zero being all. Each call must touch its own data
// only; then the answer doesn't depend on the number of cores.
func atOnce(n, workers int, f func(i int)) {
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	jobs := make(chan int)
	var group sync.WaitGroup
	for range min(n, workers) {
		group.Go(func() {
			for i := range jobs {
				f(i)
			}
		})
	}
	for i := range n {
		jobs <- i
	}
	close(jobs)
	group.Wait()
}
