package lzma

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// xz is another program that reads the form; the browser's tests read it with the
// page's own unpacker.
func unpacked(t *testing.T, packed []byte) []byte {
	t.Helper()
	c := exec.Command("xz", "--format=lzma", "-d", "-c")
	c.Stdin = bytes.NewReader(packed)
	var errs bytes.Buffer
	c.Stderr = &errs
	out, err := c.Output()
	require.NoError(t, err, errs.String())
	return out
}

func TestAnotherProgramReadsIt(t *testing.T) {
	if _, err := exec.LookPath("xz"); err != nil {
		t.Skip("no xz here")
	}
	source, err := os.ReadFile("encode.go")
	require.NoError(t, err)
	random := rand.New(rand.NewPCG(1, 2))
	noise := make([]byte, 70_000)
	for i := range noise {
		noise[i] = byte(random.IntN(256))
	}
	mixed := bytes.Repeat(append(noise[:9000:9000], source...), 9)
	gaps := bytes.Repeat(noise[:9000:9000], 9)
	for i := 9011; i < len(gaps); i += 61 {
		gaps[i] = byte(random.IntN(256))
	}
	for name, data := range map[string][]byte{
		"nothing": {}, "a byte": {7}, "two": {7, 7}, "three": {1, 2, 3}, "zeros": make([]byte, 100_000), "text": source, "noise": noise, "mixed": mixed, "gaps": gaps,
		"words": []byte(strings.Repeat("pressure, tension and gas; ", 999)),
	} {
		require.True(t, bytes.Equal(data, unpacked(t, Encode(data))), name)
	}
	require.Less(t, len(Encode(mixed)), 9000+len(source)/2+1000, "what is far back is found")
	require.Less(t, len(Encode(gaps)), 11_000, "what goes on after a byte that differs: 10,612, and 11,904 without that")
	require.Less(t, len(Encode(noise)), len(noise)+len(noise)/50)
}

func BenchmarkEncode(b *testing.B) {
	data, err := os.ReadFile(os.Getenv("LZMA_FILE"))
	if err != nil {
		b.Skip("LZMA_FILE names a file")
	}
	for b.Loop() {
		b.ReportMetric(float64(len(Encode(data))), "bytes")
	}
}
