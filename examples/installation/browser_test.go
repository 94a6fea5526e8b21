package main

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"completion.example/internal/long"
	"github.com/stretchr/testify/require"
)

// measure is put into a copy of the page: it lists what the browser's own layout
// shows to be wider than its place, and drawn text that leaves its drawing or runs
// into another.
const measure = `<script>addEventListener("load", () => {
 const bad = [matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light"];
 const name = (e) => e.tagName + "." + (e.getAttribute("class") || "") + ": " + e.textContent.trim().slice(0, 60);
 if (document.documentElement.scrollWidth > innerWidth + 1) bad.push("page is " + document.documentElement.scrollWidth + " wide in " + innerWidth);
 for (const e of document.querySelectorAll("p, td, th, dd, h1, h2, h3, h4, li, .card, .panel, figcaption")) {
  if (e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0 && getComputedStyle(e).display !== "inline") bad.push("clipped " + name(e));
 }
 for (const s of document.querySelectorAll("svg")) {
  const frame = s.getBoundingClientRect();
  if (!frame.width) continue; // the other one of phone and desk
  const texts = [...s.querySelectorAll("text")].map((t) => [t, t.getBoundingClientRect()]);
  for (const [t, r] of texts) {
   if (getComputedStyle(t).fill === getComputedStyle(document.body).backgroundColor) bad.push("in the paper's ink: " + name(t));
   if (r.left < frame.left - 1 || r.right > frame.right + 1 || r.top < frame.top - 2 || r.bottom > frame.bottom + 2) bad.push("leaves its drawing: " + name(t));
  }
  for (let i = 0; i < texts.length; i++) for (let k = i + 1; k < texts.length; k++) {
   const a = texts[i][1], b = texts[k][1], x = Math.min(a.right, b.right) - Math.max(a.left, b.left), y = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
   if (x > 1 && y > 0.35 * Math.min(a.height, b.height)) bad.push("collide: " + texts[i][0].textContent + " / " + texts[k][0].textContent);
  }
 }
 const out = document.createElement("pre"); out.id = "measured"; out.textContent = JSON.stringify(bad); document.body.append(out);
 parent.postMessage(out.textContent, "*");
});</script></body>`

// browserHere finds a browser, or skips the test.
func browserHere(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil && long.Wanted() {
			return path
		}
	}
	t.Skip("no browser here, or not with TEST_LONG=1")
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
		{"letter", "two-packers-dropped-plug", 8, 0}, {"letter", "horizontal-nitrogen-cushion", 17, 0}, {"a4", "demo-as-tally", 26, 0},
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
		read, err := exec.LookPath("pdftotext")
		if err != nil {
			continue
		}
		text, err := exec.Command(read, "-layout", file+".pdf", "-").Output() //nolint:gosec // on a file of our own
		require.NoError(t, err)
		printed(t, strings.Split(strings.TrimSuffix(string(text), "\f"), "\f"), x.steps, plan+", "+paper)
	}
}

// printed holds the text of printed pages to what they must have: page n of m on each, each
// step on one, and the heads of the schedule wherever it goes on.
func printed(t *testing.T, pages []string, steps int, name string) {
	t.Helper()
	step, schedule := 0, false
	for i, text := range pages {
		require.Contains(t, text, fmt.Sprintf("page %d of %d", i+1, len(pages)), name)
		lines := strings.Split(strings.TrimSpace(text), "\n")
		head := strings.TrimSpace(lines[0])
		if strings.HasPrefix(head, fmt.Sprintf("%d. ", step+1)) {
			step++
			require.Contains(t, text, "initials", name)
			continue
		}
		require.Zero(t, step, "%s: page %d goes on with a step: %s", name, i+1, head)
		switch {
		case strings.HasPrefix(head, "Schedule"), strings.HasPrefix(head, "step "):
			schedule = true
			require.Contains(t, text, "apply at surface", "%s: page %d of the schedule has no heads", name, i+1)
		case strings.HasPrefix(head, "Not checked"):
			schedule = false
		default:
			require.False(t, schedule, "%s: page %d begins within a row of the schedule: %s", name, i+1, head)
		}
	}
	require.Equal(t, steps, step, "%s: pages of steps", name)
}

// phone holds a page in a frame: no window of Chromium's is as narrow as a phone.
const phone = `<!doctype html><body style="margin:0"><iframe src="page.html" style="width:390px;height:1000px;border:0"></iframe>
<script>addEventListener("message", (m) => { const out = document.createElement("pre"); out.id = "measured"; out.textContent = m.data; document.body.append(out); });</script></body>`

// In a browser, where there is one, nothing is clipped, nothing is wider than its place and no
// labels collide, on a phone, a tablet and a desk, in the light and in the dark.
func TestLayoutInABrowser(t *testing.T) {
	browser := browserHere(t)
	pages := map[string]string{
		"demo":    pageOf(t, 0),
		"si":      pageOf(t, 0, "-plan", "testdata/two-zones.json"),
		"refuted": pageOf(t, 1, "-plan", planFile("sleeves-in-wrong-order"), "-floor"),
		"mended":  pageOf(t, 1, "-set", "devices.isolation valve C.opens.pins = 5", "-samples", "200", "-floor"),
		"gas":     pageOf(t, 0, "-plan", planFile("horizontal-nitrogen-cushion"), "-floor"),
		"strings": pageOf(t, 0, "-plan", planFile("two-packers-dropped-plug"), "-floor"),
		"branch":  pageOf(t, 1, "-plan", planFile("branch-shifts-without-equalising")),
		"begin":   pageOf(t, 0, "-plan", "begin/si.json"),
		"as run":  pageOf(t, 1, "-as-run", logFile("leak"), "-floor"),
	}
	for name, page := range pages {
		folder := t.TempDir()
		file, framed := filepath.Join(folder, "page.html"), filepath.Join(folder, "phone.html")
		require.NoError(t, os.WriteFile(file, []byte(strings.Replace(page, "</body>", measure, 1)), 0o600))
		require.NoError(t, os.WriteFile(framed, []byte(phone), 0o600))
		for _, wide := range []string{"390", "900", "1400"} {
			for _, dark := range []bool{false, true} {
				if dark && (wide != "390" || name != "demo" && name != "refuted") {
					continue // only inks differ
				}
				bad := measured(t, browser, file, wide, dark)
				require.Equal(t, map[bool]string{false: "light", true: "dark"}[dark], bad[0], "%s at %s px", name, wide)
				require.Empty(t, bad[1:], "%s at %s px", name, wide)
			}
		}
	}
}

// measured is what the browser says of a page of some width.
func measured(t *testing.T, browser, file, wide string, dark bool) (bad []string) {
	t.Helper()
	if wide == "390" {
		file = filepath.Join(filepath.Dir(file), "phone.html")
	}
	args := []string{"--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--window-size=" + map[bool]string{true: "500", false: wide}[wide == "390"] + ",1000", "--virtual-time-budget=5000", "--dump-dom"}
	if dark {
		args = append(args, "--blink-settings=preferredColorScheme=0")
	}
	out, err := exec.Command(browser, append(args, "file://"+file)...).Output() //nolint:gosec // a browser on a file of our own
	require.NoError(t, err)
	m := regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`).FindSubmatch(out)
	require.NotNil(t, m, "the browser measured nothing")
	require.NoError(t, json.Unmarshal([]byte(html.UnescapeString(string(m[1]))), &bad))
	return bad
}
