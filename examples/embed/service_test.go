package main

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"completion.example/hydrostatics/unit/fault"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func plan(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("../installation/plans/" + name + ".json")
	require.NoError(t, err)
	return data
}

// post sends a body and returns code and answer.
func post(t testing.TB, h http.Handler, query string, body []byte) (int, []byte) {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequestWithContext(t.Context(), http.MethodPost, "/check"+query, bytes.NewReader(body)))
	require.Equal(t, "application/json", w.Header().Get("Content-Type"))
	return w.Code, w.Body.Bytes()
}

func TestAnswersAPlan(t *testing.T) {
	h := newService(1<<20, time.Minute, 2)
	code, body := post(t, h, "?windows=no", plan(t, "demo"))
	require.Equal(t, http.StatusOK, code)
	var s sequence.Summary
	require.NoError(t, json.Unmarshal(body, &s))
	require.Equal(t, sequence.Proved, s.Verdict)
	require.Empty(t, s.Steps[1].Windows)

	code, body = post(t, h, "?windows=no", plan(t, "setting-shears-isolation-valve"))
	require.Equal(t, http.StatusOK, code)
	require.NoError(t, json.Unmarshal(body, &s))
	require.Equal(t, sequence.Refuted, s.Verdict)
	require.NotEmpty(t, s.Findings[0].Witness)

	code, body = post(t, h, "?full=yes", plan(t, "../begin/field"))
	require.Equal(t, http.StatusOK, code)
	var full sequence.Programme
	require.NoError(t, json.Unmarshal(body, &full))
	windows := 0
	for _, step := range full.Steps {
		windows += len(step.Windows)
	}
	require.Positive(t, windows)
}

func TestFaultsAreAList(t *testing.T) {
	h := newService(1<<20, time.Minute, 2)
	code, body := post(t, h, "", []byte(strings.Replace(string(plan(t, "demo")), `"9.4 lb/gal"`, `"9.4"`, 1)))
	require.Equal(t, http.StatusBadRequest, code)
	var faults []fault.Fault
	require.NoError(t, json.Unmarshal(body, &faults))
	require.Len(t, faults, 1)
	require.Equal(t, "fluids[0].density", faults[0].Path)
	require.ErrorContains(t, faults[0].Err, "no unit given")

	code, body = post(t, h, "", []byte(`{"steps": `))
	require.Equal(t, http.StatusBadRequest, code)
	require.Contains(t, string(body), `"fault":"line 1`)
}

func TestLimits(t *testing.T) {
	code, body := post(t, newService(100, time.Minute, 1), "", plan(t, "demo"))
	require.Equal(t, http.StatusRequestEntityTooLarge, code, "%s", body)
	code, body = post(t, newService(1<<20, time.Millisecond, 1), "", plan(t, "demo"))
	require.Equal(t, http.StatusGatewayTimeout, code, "%s", body)
	code, body = post(t, newService(1<<20, time.Minute, 0), "", plan(t, "demo"))
	require.Equal(t, http.StatusServiceUnavailable, code, "%s", body)
}

// Over a real connection: a caller that hangs up frees the service at once, and the
// next one is answered.
func TestACallerThatHangsUpFreesTheService(t *testing.T) {
	inside, left := make(chan struct{}), make(chan time.Time, 1)
	h := newService(1<<20, time.Minute, 1)
	var once sync.Once
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		once.Do(func() { close(inside) })
		h.ServeHTTP(w, r)
		select {
		case left <- time.Now():
		default:
		}
	}))
	defer server.Close()
	ctx, cancel := context.WithCancel(t.Context())
	request, err := http.NewRequestWithContext(ctx, http.MethodPost, server.URL+"/check", bytes.NewReader(plan(t, "demo")))
	require.NoError(t, err)
	done := make(chan error, 1)
	go func() {
		response, err := http.DefaultClient.Do(request)
		if err == nil {
			response.Body.Close() //nolint:errcheck // nothing is read from it
		}
		done <- err
	}()
	<-inside
	time.Sleep(10 * time.Millisecond)
	cancel()
	gaveUp := time.Now()
	require.ErrorIs(t, <-done, context.Canceled)
	require.Less(t, (<-left).Sub(gaveUp), 10*time.Second) // 50 ms of its own: see package sequence
	response, err := http.Post(server.URL+"/check?windows=no", "application/json", bytes.NewReader(plan(t, "demo")))
	require.NoError(t, err)
	body, err := io.ReadAll(response.Body)
	require.NoError(t, err)
	require.NoError(t, response.Body.Close())
	require.Equal(t, http.StatusOK, response.StatusCode, "%s", body)
}
