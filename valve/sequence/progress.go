package sequence

import "sync"

// progress tells whoever asked how far the work has come: from 0 to 1 and never back,
// from one goroutine at a time.
type progress struct {
	told  func(share float64, doing string) // nil: nobody asked
	mutex sync.Mutex
	share float64
}

func (p *progress) tell(share float64, doing string) {
	if p == nil || p.told == nil {
		return
	}
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.share = max(p.share, share)
	p.told(p.share, doing)
}

// done tells that one more of n parts is done, of which the work between two shares
// consists.
func (p *progress) done(part *int, n int, from, to float64, doing string) {
	if p == nil || p.told == nil {
		return
	}
	p.mutex.Lock()
	defer p.mutex.Unlock()
	*part++
	p.share = max(p.share, from+(to-from)*float64(*part)/float64(n))
	p.told(p.share, doing)
}
