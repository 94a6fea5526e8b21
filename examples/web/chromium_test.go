package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// chromium is a browser that a test drives: commands of the DevTools protocol as
// JSON over a pair of pipes, each ended by a zero byte.
type chromium struct {
	t       *testing.T
	to      *os.File
	from    *bufio.Reader
	id      int
	session string
	pid     int
	faults  []string // what the page's console tells
	asked   []string // addresses that were asked for
}

// newChromium starts one, or skips the test where there is none.
func newChromium(t *testing.T) *chromium {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
		t.Skip("no Chromium here (Debian package chromium): the page isn't tried in a browser")
	}
	theirs, to, err := os.Pipe()
	require.NoError(t, err)
	from, ours, err := os.Pipe()
	require.NoError(t, err)
	c := exec.Command(path, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--no-first-run", "--disable-background-networking", //nolint:gosec // a browser for a page of our own
		"--disable-component-update", "--remote-debugging-pipe", "--user-data-dir="+t.TempDir())
	c.ExtraFiles = []*os.File{theirs, ours}
	require.NoError(t, c.Start())
	theirs.Close()
	ours.Close()
	b := &chromium{t: t, to: to, from: bufio.NewReaderSize(from, 1<<20), pid: c.Process.Pid}
	t.Cleanup(func() {
		b.session = ""
		b.send("Browser.close", nil)
		done := make(chan struct{})
		go func() { c.Wait(); close(done) }() //nolint:errcheck // it was asked to end
		select {
		case <-done:
		case <-time.After(10 * time.Second):
			c.Process.Kill() //nolint:errcheck // started above
		}
		to.Close()
		from.Close()
	})
	var target struct{ TargetID string }
	b.call("Target.createTarget", map[string]any{"url": "about:blank"}, &target)
	var attached struct{ SessionID string }
	b.call("Target.attachToTarget", map[string]any{"targetId": target.TargetID, "flatten": true}, &attached)
	b.session = attached.SessionID
	for _, domain := range []string{"Page", "Runtime", "Log", "Network"} {
		b.call(domain+".enable", nil, nil)
	}
	return b
}

func (b *chromium) send(method string, params any) {
	b.id++
	m := map[string]any{"id": b.id, "method": method}
	if params != nil {
		m["params"] = params
	}
	if b.session != "" {
		m["sessionId"] = b.session
	}
	text, err := json.Marshal(m)
	if err == nil {
		_, err = b.to.Write(append(text, 0))
	}
	if err != nil {
		b.t.Logf("%s: %v", method, err)
	}
}

// call sends a command and waits for its answer.
func (b *chromium) call(method string, params, result any) {
	b.t.Helper()
	b.send(method, params)
	for {
		text, err := b.from.ReadBytes(0)
		require.NoError(b.t, err, method)
		var m struct {
			ID     int
			Method string
			Error  *struct{ Message string }
			Result json.RawMessage
			Params json.RawMessage
		}
		require.NoError(b.t, json.Unmarshal(text[:len(text)-1], &m))
		if m.ID != b.id {
			b.event(m.Method, m.Params)
			continue
		}
		require.Nil(b.t, m.Error, "%s: %+v", method, m.Error)
		if result != nil {
			require.NoError(b.t, json.Unmarshal(m.Result, result))
		}
		return
	}
}

func (b *chromium) event(method string, params json.RawMessage) {
	var p struct {
		Entry            struct{ Level, Text string }
		ExceptionDetails struct {
			Text      string
			Exception struct{ Description string }
		}
		Request struct{ URL string }
	}
	if json.Unmarshal(params, &p) != nil {
		return
	}
	switch method {
	case "Log.entryAdded":
		if p.Entry.Level == "error" {
			b.faults = append(b.faults, p.Entry.Text)
		}
	case "Runtime.exceptionThrown":
		b.faults = append(b.faults, p.ExceptionDetails.Text+" "+p.ExceptionDetails.Exception.Description)
	case "Network.requestWillBeSent":
		b.asked = append(b.asked, p.Request.URL)
	}
}

// eval works out an expression of the page, a promise too.
func (b *chromium) eval(expression string, result any) {
	b.t.Helper()
	var r struct {
		Result           struct{ Value json.RawMessage }
		ExceptionDetails *struct {
			Text      string
			Exception struct{ Description string }
		}
	}
	b.call("Runtime.evaluate", map[string]any{"expression": expression, "awaitPromise": true, "returnByValue": true}, &r)
	require.Nil(b.t, r.ExceptionDetails, "%s: %+v", expression, r.ExceptionDetails)
	if result != nil {
		require.NoError(b.t, json.Unmarshal(r.Result.Value, result), "%s: %s", expression, r.Result.Value)
	}
}

func (b *chromium) text(selector string) string {
	b.t.Helper()
	var text string
	b.eval(fmt.Sprintf("[...document.querySelectorAll(%q)].map(e => e.textContent).join('\\n')", selector), &text)
	return text
}

// patience is long: the machine may be busy with other tests.
const patience = 2 * time.Minute

// until waits until an expression of the page is true.
func (b *chromium) until(expression string) {
	b.t.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(20 * time.Millisecond) {
		var is bool
		b.eval("!!("+expression+")", &is)
		if is {
			return
		}
		if time.Now().After(end) {
			require.FailNow(b.t, "it doesn't come", "%s\n%s\n%s", expression, strings.Join(b.faults, "\n"), b.text("#state, #faults, #plan-faults, #work"))
		}
	}
}

// open loads a page and waits until it answers.
func (b *chromium) open(address string) {
	b.t.Helper()
	b.call("Page.navigate", map[string]any{"url": address}, nil)
	b.until("performance.getEntriesByName('ready').length")
}

// choose goes to a question, or to the plan, by its link.
func (b *chromium) choose(name string) {
	b.t.Helper()
	b.eval(fmt.Sprintf("document.querySelector('a[href=\"#%s\"]').click()", name), nil)
}

// fill types a text into a field as a person does: it is selected and typed over.
func (b *chromium) fill(id, text string) {
	b.t.Helper()
	b.eval(fmt.Sprintf("(() => { const e = document.getElementById(%q); e.scrollIntoView(); e.focus(); e.select(); })()", id), nil)
	b.call("Input.insertText", map[string]any{"text": text}, nil)
}

func (b *chromium) key(key, code string, number int) {
	b.t.Helper()
	for _, kind := range []string{"rawKeyDown", "keyUp"} {
		b.call("Input.dispatchKeyEvent", map[string]any{"type": kind, "key": key, "code": code, "windowsVirtualKeyCode": number}, nil)
	}
}

// wide sets the width of the window, and light or dark.
func (b *chromium) wide(pixels int, scheme string) {
	b.t.Helper()
	b.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": pixels, "height": 1000, "deviceScaleFactor": 1, "mobile": false}, nil)
	b.call("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{{"name": "prefers-color-scheme", "value": scheme}}}, nil)
}

// shot writes a picture of the window where WEB_SHOTS names a folder.
func (b *chromium) shot(name string) {
	b.t.Helper()
	folder := os.Getenv("WEB_SHOTS")
	if folder == "" {
		return
	}
	var r struct{ Data []byte }
	b.call("Page.captureScreenshot", map[string]any{"captureBeyondViewport": true}, &r)
	require.NoError(b.t, os.WriteFile(folder+"/"+name+".png", r.Data, 0o600))
}
