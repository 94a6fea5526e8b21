// Embed is an HTTP service around the library, as short as one may be: a plan
// comes in, its programme goes out.
//
//	go run ./examples/embed -listen localhost:8080
//	curl --data-binary @examples/installation/plans/demo.json 'localhost:8080/check?windows=no'
//
// POST /check answers 200 with the short form of the programme, whatever its
// verdict; ?full=yes with the full one; ?windows=no leaves the windows out. What is
// wrong with the plan is answered 400 as a list of {"path", "fault"}; a plan that is
// too long 413; a service that has its hands full 503; a plan that takes longer
// than -limit 504. A caller that hangs up stops the work within 50 ms.
//
// Pressure, tension and gas kill: who shows these answers to others shows the
// cautions of the README with them.
package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"log"
	"net/http"
	"os"
	"os/signal"
	"runtime"
	"time"

	"completion.example/hydrostatics/unit/fault"
	"completion.example/valve/sequence"
)

// service is the limits under which plans are checked.
type service struct {
	most  int64         // bytes of a plan
	limit time.Duration // of one check
	free  chan struct{} // one for each check at a time
}

func newService(most int64, limit time.Duration, atOnce int) http.Handler {
	s := &service{most, limit, make(chan struct{}, atOnce)}
	mux := http.NewServeMux()
	mux.HandleFunc("POST /check", s.check)
	return mux
}

func (s *service) check(w http.ResponseWriter, r *http.Request) {
	select {
	case s.free <- struct{}{}:
		defer func() { <-s.free }()
	default:
		w.Header().Set("Retry-After", "1")
		refuse(w, http.StatusServiceUnavailable, errors.New("is checking as many plans as it may; try again"))
		return
	}
	ctx, cancel := context.WithTimeout(r.Context(), s.limit)
	defer cancel()

	data, err := io.ReadAll(http.MaxBytesReader(w, r.Body, s.most))
	if tooLong := (*http.MaxBytesError)(nil); errors.As(err, &tooLong) {
		refuse(w, http.StatusRequestEntityTooLarge, err)
		return
	}
	if err != nil {
		refuse(w, http.StatusBadRequest, err)
		return
	}
	plan, err := sequence.Read(data)
	if err != nil {
		refuse(w, http.StatusBadRequest, err)
		return
	}
	options := sequence.Options{Workers: 1} // the service's callers share the cores
	if r.URL.Query().Get("windows") == "no" {
		options.Only = sequence.VerdictOnly
	}
	programme, err := sequence.Check(ctx, plan, options)
	switch {
	case errors.Is(err, context.DeadlineExceeded):
		refuse(w, http.StatusGatewayTimeout, err)
	case err != nil && ctx.Err() != nil: // the caller has hung up
	case err != nil:
		refuse(w, http.StatusUnprocessableEntity, err)
	case r.URL.Query().Get("full") == "yes":
		answer(w, http.StatusOK, programme)
	default:
		answer(w, http.StatusOK, programme.Summary())
	}
}

// refuse answers with the faults of an error.
func refuse(w http.ResponseWriter, code int, err error) { answer(w, code, fault.List(err)) }

func answer(w http.ResponseWriter, code int, what any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(code)
	if err := json.NewEncoder(w).Encode(what); err != nil {
		log.Print(err)
	}
}

func main() {
	listen := flag.String("listen", "localhost:8080", "`address` to listen on")
	limit := flag.Duration("limit", 10*time.Second, "longest `time` for one plan")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	server := &http.Server{Addr: *listen, Handler: newService(1<<20, *limit, runtime.GOMAXPROCS(0)), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 15 * time.Second}
	context.AfterFunc(ctx, func() {
		if err := server.Shutdown(context.Background()); err != nil {
			log.Print(err)
		}
	})
	log.Printf("listening on %s", *listen)
	if err := server.ListenAndServe(); !errors.Is(err, http.ErrServerClosed) {
		log.Fatal(err)
	}
}
