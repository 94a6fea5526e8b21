package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// measure is put into a copy of the page: it lists what the browser's own layout
// shows to be wider than its place, and drawn text that leaves its drawing or runs
// into another.
const measure = `<script>addEventListener("load", () => {
 const bad = [];
 const name = (e) => e.tagName + "." + (e.getAttribute("class") || "") + ": " + e.textContent.trim().slice(0, 60);
 if (document.documentElement.scrollWidth > innerWidth + 1) bad.push("page is " + document.documentElement.scrollWidth + " wide in " + innerWidth);
 for (const e of document.querySelectorAll("p, td, th, dd, h1, h2, h3, h4, li, .card, .panel, figcaption")) {
  if (e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0 && getComputedStyle(e).display !== "inline") bad.push("clipped " + name(e));
 }
 for (const s of document.querySelectorAll("svg.well, svg.bar")) {
  const frame = s.getBoundingClientRect(), texts = [...s.querySelectorAll("text")].map((t) => [t, t.getBoundingClientRect()]);
  for (const [t, r] of texts) {
   if (r.left < frame.left - 1 || r.right > frame.right + 1 || r.top < frame.top - 2 || r.bottom > frame.bottom + 2) bad.push("leaves its drawing: " + name(t));
  }
  for (let i = 0; i < texts.length; i++) for (let k = i + 1; k < texts.length; k++) {
   const a = texts[i][1], b = texts[k][1], x = Math.min(a.right, b.right) - Math.max(a.left, b.left), y = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
   if (x > 1 && y > 0.35 * Math.min(a.height, b.height)) bad.push("collide: " + texts[i][0].textContent + " / " + texts[k][0].textContent);
  }
 }
 const out = document.createElement("pre"); out.id = "measured"; out.textContent = JSON.stringify(bad); document.body.append(out);
});</script></body>`

// browserHere finds a browser, or skips the test.
func browserHere(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil && !testing.Short() {
			return path
		}
	}
	t.Skip("no browser here")
	return ""
}

// Printed, the rig-floor set has no more pages than the steps and six, on either
// paper, and every step stands on one.
func TestPrintedInABrowser(t *testing.T) {
	browser := browserHere(t)
	for _, x := range []struct {
		paper, plan string
		steps, code int
	}{
		{"a4", "sleeve-opened-overbalanced", 26, 1}, {"letter", "demo", 26, 0}, {"letter", "seals-leave-the-bore", 26, 1},
		{"a4", "two-packers-dropped-plug", 8, 0}, {"letter", "horizontal-nitrogen-cushion", 17, 0}, {"a4", "demo-as-tally", 26, 0},
	} {
		paper, plan, want := x.paper, x.plan, x.code
		file := filepath.Join(t.TempDir(), "floor")
		require.NoError(t, os.WriteFile(file+".html", []byte(pageOf(t, want, "-plan", planFile(plan), "-floor", "-paper", paper)), 0o600))
		require.NoError(t, exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer", //nolint:gosec // a browser on a file of our own
			"--print-to-pdf="+file+".pdf", "file://"+file+".html").Run())
		pdf, err := os.ReadFile(file + ".pdf")
		require.NoError(t, err)
		pages := len(regexp.MustCompile(`/Type /Page\b[^s]`).FindAll(pdf, -1))
		require.LessOrEqual(t, pages, x.steps+6, "%s, %s", plan, paper)
		require.GreaterOrEqual(t, pages, x.steps+2, "%s, %s", plan, paper)
	}
}

// In a browser, where there is one, nothing is clipped and no labels collide, on a
// phone, a tablet and a desk.
func TestLayoutInABrowser(t *testing.T) {
	browser := browserHere(t)
	pages := map[string]string{
		"demo":    pageOf(t, 0, "-floor"),
		"si":      pageOf(t, 0, "-units", "si", "-floor"),
		"refuted": pageOf(t, 1, "-plan", planFile("sleeves-in-wrong-order"), "-floor"),
		"begin":   pageOf(t, 0, "-plan", "begin/si.json", "-floor"),
		"as run":  pageOf(t, 1, "-as-run", logFile("leak")),
	}
	for name, page := range pages {
		file := filepath.Join(t.TempDir(), name+".html")
		require.NoError(t, os.WriteFile(file, []byte(strings.Replace(page, "</body>", measure, 1)), 0o600))
		widths := []string{"500"} // no window of Chromium's is narrower
		if name == "demo" {
			widths = []string{"500", "900", "1400"}
		}
		for _, wide := range widths {
			out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", //nolint:gosec // a browser on a file of our own
				"--window-size="+wide+",1000", "--virtual-time-budget=5000", "--dump-dom", "file://"+file).Output()
			require.NoError(t, err)
			m := regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`).FindSubmatch(out)
			require.NotNil(t, m, "the browser measured nothing")
			var bad []string
			text := strings.NewReplacer("&lt;", "<", "&gt;", ">", "&amp;", "&").Replace(string(m[1]))
			require.NoError(t, json.Unmarshal([]byte(text), &bad))
			require.Empty(t, bad, "%s at %s px", name, wide)
		}
	}
}
