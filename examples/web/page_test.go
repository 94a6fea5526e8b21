package main

import (
	"bytes"
	"compress/gzip"
	"context"
	"fmt"
	"io"
	"net/http/httptest"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"completion.example/examples/internal/calculators"
	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// once builds the page, or reads the one that WEB_PAGE names, to try a test again
// quickly.
var once = sync.OnceValues(func() ([]byte, error) {
	if file := os.Getenv("WEB_PAGE"); file != "" {
		return os.ReadFile(file) //nolint:gosec // whoever runs the test names it
	}
	return build(context.Background())
})

// built is the page, built once for all tests.
func built(t *testing.T) []byte {
	t.Helper()
	long.Skip(t, "building the page takes a while")
	page, err := once()
	require.NoError(t, err)
	return page
}

// The page may be 2.4 MB as it is sent.
func TestSize(t *testing.T) {
	var sent bytes.Buffer
	w, err := gzip.NewWriterLevel(&sent, gzip.BestCompression)
	require.NoError(t, err)
	_, err = w.Write(built(t))
	require.NoError(t, err)
	require.NoError(t, w.Close())
	t.Logf("%d bytes, %d in gzip", len(built(t)), sent.Len())
	require.Less(t, sent.Len(), 2_400_000)
}

// What the page answers is what the command prints, for all calculators; and it
// does so with the server gone, and asks for nothing.
func TestSameTextAsTheCommands(t *testing.T) {
	page := built(t)
	b := newChromium(t)
	s := httptest.NewServer(handler(page))
	b.open(s.URL)
	s.Close()
	for _, g := range calculators.Groups() {
		for _, c := range g.Commands {
			b.choose(c.Name)
			b.until(fmt.Sprintf("document.title.startsWith('%s:') && document.querySelector('#printed')?.textContent.startsWith('%s:')", c.Name, c.Name))
			var want, errs bytes.Buffer
			c.Run(nil, &want, &errs)
			require.Empty(t, errs.String())
			require.Equal(t, want.String(), b.text("#printed"), c.Name)
			if c.Picture {
				var n int
				b.eval("document.querySelectorAll('#answer figure svg text').length", &n)
				require.Greater(t, n, 4, "%s draws", c.Name)
			}
		}
	}
	require.Len(t, b.asked, 2, "the page and the program that is made in it: %v", b.asked)
	require.Empty(t, b.faults)
}

// From the disk, by keyboard: typing, answer, picture; a misspelt unit; seven pins
// are too few and eight are right.
func TestAQuestionFromTypingToPicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "index.html")
	require.NoError(t, os.WriteFile(file, built(t), 0o600))
	b := newChromium(t)
	b.wide(1400, "light")
	used := b.processor()
	b.open("file://" + file)
	var millis float64
	b.until("document.querySelector('#answer dd')")
	b.eval("performance.getEntriesByName('answered')[0].startTime", &millis)
	t.Logf("first answer %.0f ms after the page was asked for, with %v of the processor", millis, b.processor()-used)

	b.choose("pins")
	b.until("document.title.startsWith('pins:')")
	b.fill("f-window", "4000 pis .. 4800 psi")
	b.until("document.querySelector('#f-window').getAttribute('aria-invalid')")
	says := b.text("#f-window-wrong")
	require.Contains(t, says, `"pis" is not a unit here; write a number with one of Pa, psi`)
	require.Contains(t, b.text("#faults"), says)
	b.shot("misspelt")
	b.fill("f-window", "4000 psi .. 4800 psi")
	b.fill("f-pins", "7")
	b.until("document.querySelector('#answer .notes')?.textContent.includes('below the window')")
	require.Contains(t, b.text("#answer .notes"), "those installed may part 259 psi below the window")
	require.Contains(t, b.text("#answer dl"), "no")
	require.Empty(t, b.text("#faults"))
	used = b.processor()
	start := time.Now()
	b.fill("f-pins", "8")
	b.until("document.querySelector('#answer .notes')?.textContent === ''")
	t.Logf("answer after typing in %v, with %v of the processor", time.Since(start).Round(time.Millisecond), b.processor()-used)
	require.Contains(t, b.text("#answer dl"), "yes")
	require.Contains(t, b.text("#answer figure svg"), "must have parted at")
	require.Contains(t, b.text("#working"), "n*S*k*(1 - t)/A")
	b.shot("pins")

	for _, c := range []struct{ name, field, text, drawn string }{
		{"column", "depth", "2000 m", "Pressure down the column"},
		{"utube", "tubing-pressure", "20 bar", "Tubing and annulus, before the port opens and at rest"},
		{"envelope", "below", "480 bar", "What the packer holds"},
		{"release", "drag", "40 kN", "What the weight indicator shows"},
		{"balance", "formation", "337 bar", ""},
	} {
		b.choose(c.name)
		b.until("document.title.startsWith('" + c.name + ":') && document.querySelector('#printed')?.textContent.startsWith('" + c.name + ":')")
		b.fill("f-"+c.field, c.text)
		b.until(fmt.Sprintf("document.querySelector('#answer details:last-child code')?.textContent.includes(%q)", "-"+c.field))
		command, ok := calculators.Named(c.name)
		require.True(t, ok)
		var want bytes.Buffer
		command.Run([]string{"-" + c.field, c.text}, &want, io.Discard)
		require.Contains(t, want.String(), c.text)
		require.Equal(t, want.String(), b.text("#printed"))
		if c.drawn != "" {
			require.Contains(t, b.text("#answer figure svg"), c.drawn)
		}
	}
	require.Empty(t, b.faults)
}

// A survey is opened as a file.
func TestAFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "index.html")
	require.NoError(t, os.WriteFile(file, built(t), 0o600))
	b := newChromium(t)
	b.open("file://" + file)
	b.choose("column")
	b.until("document.querySelector('#f-survey') && document.querySelector('#printed')")
	b.eval(`(() => { const d = new DataTransfer(); d.items.add(new File(["MD,inclination,azimuth\n0 m,0 deg,0 deg\n1570.79632679 m,90 deg,0 deg\n9000 m,90 deg,0 deg\n"], "arc.csv"));
		const e = document.querySelector('#f-survey'); e.files = d.files; e.dispatchEvent(new Event('input', {bubbles: true})); })()`, nil)
	b.until("document.querySelector('#printed')?.textContent.includes('Depths by the survey')")
	require.Contains(t, b.text("#printed"), "arc.csv")
}
