package main

import (
	"encoding/json"
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

// measure lists what the browser's own layout shows to be wider than its place, and
// drawn text that leaves its drawing or runs into another. A window of Chromium's is
// never narrower than 500 px, so the width is put on the page itself.
const measure = `<script>addEventListener("load", () => {
 const bad = [], wide = WIDTH;
 document.body.style.width = wide + "px";
 for (const d of document.querySelectorAll("details")) d.open = true;
 const name = (e) => e.tagName + "." + (e.getAttribute("class") || "") + ": " + e.textContent.trim().slice(0, 60);
 for (const e of document.querySelectorAll("p, li, h1, h2, pre, figure, svg, blockquote, math, .wide, summary")) {
  const r = e.getBoundingClientRect();
  if (r.right > wide + 1) bad.push("past the edge: " + name(e));
  if (e.scrollWidth > e.clientWidth + 2 && e.clientWidth > 0 && getComputedStyle(e).overflowX === "visible" && getComputedStyle(e).display === "block") bad.push("clipped: " + name(e));
 }
 for (const m of document.querySelectorAll("math")) if (m.getBoundingClientRect().height < 8) bad.push("not drawn: " + name(m));
 for (const s of document.querySelectorAll("svg")) {
  const frame = s.getBoundingClientRect(), texts = [...s.querySelectorAll("text")].map((t) => [t, t.getBoundingClientRect()]);
  for (const [t, r] of texts) if (r.left < frame.left - 1 || r.right > frame.right + 1 || r.top < frame.top - 2 || r.bottom > frame.bottom + 2) bad.push("leaves its drawing: " + name(t));
  for (let i = 0; i < texts.length; i++) for (let k = i + 1; k < texts.length; k++) {
   const a = texts[i][1], b = texts[k][1], x = Math.min(a.right, b.right) - Math.max(a.left, b.left), y = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
   if (x > 1 && y > 0.35 * Math.min(a.height, b.height)) bad.push("collide: " + texts[i][0].textContent + " / " + texts[k][0].textContent);
  }
 }
 const out = document.createElement("pre"); out.id = "measured"; out.textContent = JSON.stringify(bad); document.body.append(out);
});</script></body>`

// In a browser, where there is one, nothing is clipped and no labels collide, on a
// phone and on a desk.
func TestPagesInABrowser(t *testing.T) {
	browser := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil && browser == "" {
			browser = path
		}
	}
	if browser == "" || !long.Wanted() {
		t.Skip("no browser here, or not with TEST_LONG=1")
	}
	printed, err := ran()
	require.NoError(t, err)
	all := lessons(t)
	together := "" // all lessons in one page, as a browser takes seconds to begin
	for i, l := range all {
		text, err := webpage(all, i, printed[l.Name])
		require.NoError(t, err)
		if i == 0 {
			together = text
			continue
		}
		_, body, _ := strings.Cut(text, "<main>")
		body, _, _ = strings.Cut(body, "</main>")
		together = strings.Replace(together, "</main>", body+"</main>", 1)
	}
	for _, wide := range []string{"390", "1400"} {
		file := filepath.Join(t.TempDir(), "course.html")
		measured := strings.Replace(strings.Replace(together, "</body>", measure, 1), "WIDTH", wide, 1)
		require.NoError(t, os.WriteFile(file, []byte(measured), 0o600))
		out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", //nolint:gosec // a browser on a file of our own
			"--window-size=1400,1000", "--virtual-time-budget=5000", "--dump-dom", "file://"+file).Output()
		require.NoError(t, err)
		m := regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`).FindSubmatch(out)
		require.NotNil(t, m, "the browser measured nothing")
		var bad []string
		require.NoError(t, json.Unmarshal([]byte(html.UnescapeString(string(m[1]))), &bad))
		require.Empty(t, bad, "at %s px", wide)
	}
}
