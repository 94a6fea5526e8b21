package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"
)

// progress tells on a terminal how far the work has come, once it has taken more
// than a second. Into a pipe or a file it writes nothing.
type progress struct {
	out     io.Writer
	started time.Time
	mutex   sync.Mutex
	share   float64
	doing   string
	written int
	end     chan struct{}
	ended   sync.WaitGroup
}

const (
	patience = time.Second
	pause    = 200 * time.Millisecond
)

func newProgress(out io.Writer, terminal bool) *progress {
	p := &progress{out: out, started: time.Now(), doing: "walking the plan", end: make(chan struct{})}
	if terminal {
		p.ended.Go(p.watch)
	}
	return p
}

// isTerminal tells whether a person watches.
func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// tell is what the engine calls.
func (p *progress) tell(share float64, doing string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	p.share, p.doing = share, doing
}

func (p *progress) watch() {
	tick := time.NewTicker(pause)
	defer tick.Stop()
	for {
		select {
		case <-p.end:
			return
		case now := <-tick.C:
			if now.Sub(p.started) >= patience {
				p.write(now)
			}
		}
	}
}

func (p *progress) write(now time.Time) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	text := fmt.Sprintf("%s, %.0f s", p.doing, now.Sub(p.started).Seconds())
	if p.share > 0 {
		text = fmt.Sprintf("%3.0f %%  %s", 100*min(p.share, 1), text)
	}
	text += " (Ctrl-C stops with what is known)"
	fmt.Fprintf(p.out, "\r%s%s", text, strings.Repeat(" ", max(p.written-len(text), 0)))
	p.written = len(text)
}

// done takes the line away.
func (p *progress) done() {
	close(p.end)
	p.ended.Wait()
	if p.written > 0 {
		fmt.Fprintf(p.out, "\r%s\r", strings.Repeat(" ", p.written))
	}
}
