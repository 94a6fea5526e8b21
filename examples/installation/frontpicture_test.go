package main

import (
	"flag"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var shoot = flag.Bool("shoot", false, "take the README's picture of the report anew, with a browser")

// The README's picture of the report is a photograph, which only a browser takes; so
// its words are kept beside it and held to those of the report's first page. Where
// they differ:
//
//	go test ./examples/installation -run FrontPicture -shoot
func TestFrontPictureIsCurrent(t *testing.T) {
	page := pageOf(t, 0)
	words := firstPage(t, page)
	const record = "testdata/report.txt"
	if *shoot {
		file := filepath.Join(t.TempDir(), "report.html")
		require.NoError(t, os.WriteFile(file, []byte(page), 0o600))
		picture, err := filepath.Abs("report.png")
		require.NoError(t, err)
		out, err := exec.Command(browserHere(t), "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--window-size=1085,900", //nolint:gosec // the browser that was found
			"--screenshot="+picture, "file://"+file).CombinedOutput()
		require.NoError(t, err, "%s", out)
		require.NoError(t, os.WriteFile(record, []byte(words), 0o644)) //nolint:gosec // it is for everybody to read
	}
	want, err := os.ReadFile(record)
	require.NoError(t, err)
	require.Equal(t, string(want), words, "the README's picture shows another report: run this test with -shoot")
	info, err := os.Stat("report.png")
	require.NoError(t, err)
	require.Greater(t, info.Size(), int64(20_000))
}

// firstPage are the words of the report down to its schedule, a line for each run of
// them.
func firstPage(t *testing.T, page string) string {
	t.Helper()
	body := page[strings.Index(page, "<body"):]
	end := strings.Index(body, `id="schedule"`)
	require.Positive(t, end)
	text := regexp.MustCompile(`(?s)<(style|script).*?</(style|script)>|<[^>]*>?`).ReplaceAllString(body[:end], "\n")
	text = regexp.MustCompile(`, plan [0-9a-f]+`).ReplaceAllString(text, "") // which any change of the file changes
	lines := strings.FieldsFunc(html.UnescapeString(text), func(r rune) bool { return r == '\n' })
	var all []string
	for _, line := range lines {
		if line = strings.TrimSpace(line); line != "" {
			all = append(all, line)
		}
	}
	return strings.Join(all, "\n") + "\n"
}
