package main

import (
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const known = "document.querySelector('#plan-printed') && document.querySelector('#work').textContent === ''"

// set moves a slider of the plan by its name, as far as it tells.
func (b *chromium) set(name, value string) {
	b.t.Helper()
	b.eval(`(() => { const k = [...document.querySelectorAll('.knob')].find(e => e.querySelector('span').textContent === '`+name+`');
		const r = k.querySelector('input[type=range]'); r.focus(); r.value = '`+value+`'; window.changed = performance.now();
		document.querySelector('#verdict').textContent = ''; r.dispatchEvent(new Event('input', {bubbles: true})); })()`, nil)
}

// The plan with one pin too few: why, and eight are right; a density, a gauge; a
// broken plan; stop.
func TestAPlanWhileItIsChanged(t *testing.T) {
	page := built(t)
	s := httptest.NewServer(handler(page))
	defer s.Close()
	b := newChromium(t)
	b.wide(1400, "dark")
	b.open(s.URL)
	b.choose("plan")
	b.until(known)
	require.Contains(t, b.text("#verdict"), "PROVED")
	demo, err := os.ReadFile("../installation/testdata/demo.golden")
	require.NoError(t, err)
	same(t, string(demo), b.text("#plan-printed"))
	require.Contains(t, b.text("#well svg"), "isolation valve C")
	require.Contains(t, b.text("#steps .window"), "hold tubing")

	b.eval("(() => { const e = document.querySelector('#sample'); e.value = 'seven-pins-too-few'; e.dispatchEvent(new Event('change')); })()", nil)
	b.until("document.querySelector('#verdict').textContent.startsWith('REFUTED') && " + known)
	require.Contains(t, b.text("#findings"), "isolation valve C: opens: can happen, and is not intended in this step")
	require.Contains(t, b.text("#findings"), "2358 psi to 2983 psi")
	b.shot("seven")
	b.eval("(() => { const r = document.querySelector('#step'); r.value = 5; r.dispatchEvent(new Event('input', {bubbles: true})); })()", nil)
	b.until("document.querySelector('#step-name').textContent.startsWith('5,') && " + known)
	used := b.processor()
	b.set("isolation valve C: opens", "8")
	b.until("document.querySelector('#verdict').textContent.startsWith('PROVED')")
	var verdict, inView, all float64
	b.eval("performance.now() - window.changed", &verdict)
	toVerdict := b.processor() - used
	require.Contains(t, b.text("#findings"), "pins.count = 8 (was 7)")
	require.Contains(t, b.text("#tight"), "fracture pressure")
	b.until("document.querySelector('#step-' + document.querySelector('#step').value + ' .window')")
	b.eval("performance.now() - window.changed", &inView)
	require.Contains(t, b.text("#steps"), "windows are being looked for", "those of the step in view come before all others")
	b.until(known)
	b.eval("performance.now() - window.changed", &all)
	t.Logf("a changed plan: verdict, margins and drawing after %.0f ms, windows of the step in view after %.0f ms, all after %.0f ms; %v and %v of the processor", verdict, inView, all, toVerdict, b.processor()-used)
	require.Contains(t, b.text("#changes"), "refuted")
	b.shot("eight")

	b.set("base oil", "7.6")
	b.until("document.querySelector('#findings').textContent.includes('fluids.base oil.density = 7.6 lb/gal') && " + known)
	b.set("tubing", "-200")
	b.until("document.querySelector('#findings').textContent.includes('200 psi too little') && " + known)

	b.eval("document.querySelector('#whole').open = true", nil)
	b.fill("text", strings.Replace(string(planText(t)), `"2600 psi"`, `"2600 pis"`, 1))
	b.until("document.querySelector('#plan-faults li')")
	require.Contains(t, b.text("#plan-faults"), "pis")
	require.Contains(t, b.text("#plan-faults"), "steps[4]")
	b.fill("text", string(planText(t)))
	b.until("document.querySelector('#verdict').textContent.startsWith('PROVED') && !document.querySelector('#plan-faults li') && " + known)

	// What is under way stops, and the page goes on.
	b.eval(`(() => { const r = document.querySelector('#k-0-slider'); r.value = 6; r.dispatchEvent(new Event('input', {bubbles: true})); })()`, nil)
	b.until("!document.querySelector('#stop').hidden")
	b.eval("document.querySelector('#stop').click()", nil)
	b.until("document.querySelector('#work').textContent.startsWith('Stopped') || " + known)
	b.set("isolation valve C: opens", "7")
	b.until(known)
	require.Empty(t, b.faults)
}

func planText(t *testing.T) []byte {
	t.Helper()
	text, err := os.ReadFile("../installation/plans/demo.json")
	require.NoError(t, err)
	return text
}

// same wants the same text as the command prints, and shows the first line that
// isn't.
func same(t *testing.T, want, got string) {
	t.Helper()
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(a), len(b)) {
		require.Equal(t, a[i], b[i], "line %d", i+1)
	}
	require.Len(t, b, len(a))
}
