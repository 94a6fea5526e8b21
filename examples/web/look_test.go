package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// wide lists what the browser's layout shows to be wider than its place, fields
// without a name, and words that stand out too little from what is behind them
// (4.5 to 1; Source: WCAG 2.2, criterion 1.4.3 and its definition of relative
// luminance).
const wide = `(() => {
 const bad = [], name = (e) => e.tagName + "." + (e.getAttribute("class") || e.id) + ": " + e.textContent.trim().slice(0, 50);
 if (document.documentElement.scrollWidth > innerWidth + 1) bad.push("page is " + document.documentElement.scrollWidth + " wide in " + innerWidth);
 for (const e of document.querySelectorAll("p, dt, dd, h1, h2, h3, li, label, small, summary")) if (e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0 && getComputedStyle(e).display !== "inline") bad.push("clipped " + name(e));
 for (const e of document.querySelectorAll("input, select, textarea, progress")) if (!e.hidden && e.offsetParent && !(e.labels && e.labels.length) && !e.getAttribute("aria-label") && !document.getElementById(e.getAttribute("aria-labelledby"))) bad.push("no name: " + e.outerHTML.slice(0, 80));
 const light = (c) => { const [r, g, b] = c.match(/[\d.]+/g).map((x) => { x /= 255; return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4; }); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
 for (const e of document.querySelectorAll("p, dt, dd, h2, h3, li, label, small, summary, td, th, a, button")) {
  if (!e.offsetParent || !e.textContent.trim() || e.closest(".old")) continue;
  let behind = e; while (behind && getComputedStyle(behind).backgroundColor === "rgba(0, 0, 0, 0)") behind = behind.parentElement;
  const a = light(getComputedStyle(e).color), b = light(getComputedStyle(behind || document.body).backgroundColor), ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  if (ratio < 4.5) bad.push("contrast " + ratio.toFixed(1) + " " + name(e));
 }
 return [...new Set(bad)].slice(0, 20);
})()`

// Nothing is clipped, nameless or faint, from a phone to a desk, light and dark.
func TestLayout(t *testing.T) {
	page := built(t)
	s := httptest.NewServer(handler(page))
	defer s.Close()
	b := newChromium(t)
	b.open(s.URL)
	for _, where := range []string{"pins", "envelope", "movement", "plan"} {
		b.choose(where)
		if where == "plan" {
			b.until(known)
		} else {
			b.until("document.title.startsWith('" + where + ":') && document.querySelector('#printed')?.textContent.startsWith('" + where + ":')")
		}
		for _, pixels := range []int{390, 800, 1400} {
			scheme := map[bool]string{true: "dark", false: "light"}[pixels == 800]
			b.wide(pixels, scheme)
			var bad []string
			b.eval(wide, &bad)
			require.Empty(t, bad, "%s at %d px, %s", where, pixels, scheme)
			b.shot(fmt.Sprintf("%s-%d", where, pixels))
		}
	}
	require.Empty(t, b.faults)
}

// Neither the page nor its worker may connect anywhere.
func TestNothingLeaves(t *testing.T) {
	page := built(t)
	came := 0
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		came++
		handler(page).ServeHTTP(w, r)
	}))
	defer s.Close()
	b := newChromium(t)
	b.open(s.URL)
	for _, try := range []string{
		"fetch('/').then(() => 'went', () => 'refused')",
		"new Promise(done => { const x = new XMLHttpRequest(); x.onload = () => done('went'); x.onerror = () => done('refused'); try { x.open('GET', '/'); x.send(); } catch { done('refused'); } })",
		"new Promise(done => { const i = new Image(); i.onload = () => done('went'); i.onerror = () => done('refused'); i.src = '/'; })",
		"new Promise(done => { try { const w = new WebSocket('ws://' + location.host); w.onopen = () => done('went'); w.onerror = () => done('refused'); } catch { done('refused'); } })",
		`new Promise(done => { const w = new Worker(URL.createObjectURL(new Blob(["fetch('" + location.href + "').then(() => postMessage('went'), () => postMessage('refused'))"]))); w.onmessage = (e) => done(e.data); })`,
		"new Promise(done => { const e = document.createElement('script'); e.textContent = 'window.ran = true'; document.body.append(e); done(window.ran ? 'went' : 'refused'); })",
	} {
		var how string
		b.eval(try, &how)
		require.Equal(t, "refused", how, try)
	}
	require.LessOrEqual(t, came, 2, "the page, and perhaps its icon")
}

// By keyboard alone: the first stop leads past everything to the answer.
func TestKeyboard(t *testing.T) {
	page := built(t)
	s := httptest.NewServer(handler(page))
	defer s.Close()
	b := newChromium(t)
	b.open(s.URL)
	b.until("document.querySelector('#printed')")
	b.key("Tab", "Tab", 9)
	var on string
	b.eval("document.activeElement.textContent", &on)
	require.Equal(t, "to the answer", on)
	for range 3 {
		b.key("Tab", "Tab", 9)
	}
	b.eval("document.activeElement.id", &on)
	require.Equal(t, "find", on, "past the two ways to ask")
	b.call("Input.insertText", map[string]any{"text": "safety valve depth"}, nil)
	b.until("document.querySelectorAll('#questions a').length > 0 && document.querySelectorAll('#questions a').length < 6")
	b.eval("document.querySelector('#f-window').focus()", nil)
	b.key("Enter", "Enter", 13)
	b.until("document.querySelector('#answer dd')")
}

func TestCommand(t *testing.T) {
	var out, errs bytes.Buffer
	require.Zero(t, run(t.Context(), []string{"-h"}, &out, &errs))
	require.Contains(t, out.String(), "-port")
	require.Equal(t, 2, run(t.Context(), []string{"-prot", "80"}, &out, &errs))
	require.Contains(t, errs.String(), "did you mean -port?")

	folder := filepath.Join(t.TempDir(), "a", "b")
	require.NoError(t, write(&out, folder, []byte("a page")))
	text, err := os.ReadFile(filepath.Join(folder, "index.html"))
	require.NoError(t, err)
	require.Equal(t, "a page", string(text))

	ctx, stop := context.WithCancel(t.Context())
	r, w := io.Pipe()
	ended := make(chan error)
	go func() { ended <- serve(ctx, w, 0, []byte("a page")) }()
	line, err := bufio.NewReader(r).ReadString(' ')
	require.NoError(t, err)
	require.Contains(t, line, "http://127.0.0.1:")
	go io.Copy(io.Discard, r)                        //nolint:errcheck // the rest of the line
	answer, err := http.Get(strings.TrimSpace(line)) //nolint:noctx // our own server
	require.NoError(t, err)
	text, err = io.ReadAll(answer.Body)
	require.NoError(t, err)
	require.NoError(t, answer.Body.Close())
	require.Equal(t, "a page", string(text))
	stop()
	require.NoError(t, <-ended)
}

func TestHandler(t *testing.T) {
	h := handler([]byte("a page"))
	for path, want := range map[string]int{"/": 200, "/other": 404} {
		r := httptest.NewRecorder()
		h.ServeHTTP(r, httptest.NewRequest(http.MethodGet, path, nil))
		require.Equal(t, want, r.Code)
	}
	_, err := page([]byte{1}, "</style>", "")
	require.ErrorContains(t, err, "would end its element")
}
