package main

import (
	"context"
	"encoding/json"
	"sync/atomic"
	"syscall/js"
	"time"

	"completion.example/examples/internal/calculators"
	"completion.example/examples/internal/svg"
	"completion.example/internal/calculator"
)

// In a browser the programme, and the calculators with it, answer the page of
// examples/web: they run in a worker, which calls answer with texts in JSON, and are
// answered by postMessage under their numbers. What is asked next of a plan stops
// what is under way.

// message is what the page asks.
type message struct {
	ID     int      `json:"id"`
	Do     string   `json:"do"` // ask, plans, knobs, plan or stop
	Name   string   `json:"name"`
	Args   []string `json:"args"`
	Plan   string   `json:"plan"`
	Set    []string `json:"set"`
	Gauge  []string `json:"gauge"`
	Units  string   `json:"units"`
	Step   int      `json:"step"`
	cancel context.CancelFunc
	ctx    context.Context
}

// reply is an answer, or a part of it.
type reply struct {
	ID      int               `json:"id"`
	Done    bool              `json:"done"`
	Stopped bool              `json:"stopped,omitempty"`
	Sheet   *calculator.Sheet `json:"sheet,omitempty"`
	Plan    string            `json:"plan,omitempty"`
	Knobs   []knob            `json:"knobs,omitempty"`
	View    *view             `json:"view,omitempty"`
	Step    int               `json:"step,omitempty"` // that Windows are of
	Windows []viewWindow      `json:"windows,omitempty"`
	Share   float64           `json:"share,omitempty"`
	Doing   string            `json:"doing,omitempty"`
	Faults  []string          `json:"faults,omitempty"`
}

func main() {
	asked := make(chan message, 64)
	var running atomic.Pointer[message]
	var last atomic.Int64 // number of the last question of a plan
	var v viewer
	js.Global().Set("answer", js.FuncOf(func(_ js.Value, args []js.Value) any {
		var m message
		if err := json.Unmarshal([]byte(args[0].String()), &m); err != nil {
			return nil // not of our page
		}
		if m.Do == "plan" || m.Do == "stop" {
			last.Store(int64(m.ID))
			if r := running.Load(); r != nil {
				r.cancel()
			}
		}
		if m.Do != "stop" {
			asked <- m
		}
		return nil
	}))
	post(reply{Done: true})
	for m := range asked {
		m.ctx, m.cancel = context.WithCancel(context.Background())
		if m.Do == "plan" {
			if int64(m.ID) < last.Load() {
				post(reply{ID: m.ID, Done: true, Stopped: true}) // asked anew already
				continue
			}
			running.Store(&m)
		}
		r := answerTo(&m, &v)
		running.Store(nil)
		m.cancel()
		r.ID, r.Done = m.ID, true
		post(r)
	}
}

func post(r reply) {
	text, err := json.Marshal(r)
	if err != nil {
		text = []byte(`{"done": true, "faults": ["the answer can't be written"]}`)
	}
	js.Global().Call("postMessage", string(text))
}

func answerTo(m *message, v *viewer) (r reply) {
	switch m.Do {
	case "ask":
		c, ok := calculators.Named(m.Name)
		if !ok {
			return reply{Faults: []string{"there is no question " + m.Name}}
		}
		s := c.Sheet(m.Args)
		s.Picture = svg.Themed(s.Picture)
		r.Sheet = &s
	case "plans":
		data, ok := samples()[m.Name]
		if !ok {
			return reply{Faults: []string{"there is no plan " + m.Name}}
		}
		r.Plan = string(data)
	case "knobs":
		w, _, err := beginWith([]byte(m.Plan), "the plan", &options{units: m.Units})
		if err != nil {
			return reply{Faults: faultsOf(err)}
		}
		r.Knobs = knobsOf(w.plan, w.read.System)
	case "plan":
		return walked(m, v)
	}
	return r
}

// walked shows a plan, twice; the second time is the last.
func walked(m *message, v *viewer) (r reply) {
	o := options{set: m.Set, gauge: m.Gauge, units: m.Units, over: 2}
	breathed := time.Now()
	tell := func(share float64, doing string) {
		if time.Since(breathed) < 40*time.Millisecond {
			return
		}
		post(reply{ID: m.ID, Share: share, Doing: doing})
		time.Sleep(time.Millisecond) // so that a message can come in
		breathed = time.Now()
	}
	err := v.show(m.ctx, []byte(m.Plan), &o, m.Step, tell, func(l view) {
		if l.Windows {
			r.View = &l
			return
		}
		post(reply{ID: m.ID, View: &l})
		time.Sleep(time.Millisecond)
	}, func(step int, of []viewWindow) {
		post(reply{ID: m.ID, Step: step, Windows: of})
	})
	switch {
	case m.ctx.Err() != nil:
		return reply{Stopped: true}
	case err != nil:
		return reply{Faults: faultsOf(err)}
	}
	return r
}
