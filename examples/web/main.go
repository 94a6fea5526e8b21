// Web builds a page that answers the questions of all calculators, and walks a
// programme while it is changed, in a browser, and serves it on this machine alone.
//
// With -o DIR it writes the page, one file, which works from any static host or
// from the disk, and without network once it is loaded. The commands are compiled
// to WebAssembly and answer as they do on the command line; nothing leaves the
// machine that reads the page.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"time"

	"completion.example/internal/calculator"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// run returns 0, 1 where the page can't be built or served, 2 for wrong flags.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	f := flag.NewFlagSet("web", flag.ContinueOnError)
	f.SetOutput(io.Discard)
	folder := f.String("o", "", "write the page to index.html in this `folder`, and stop")
	port := f.Int("port", 8080, "serve on this `port` of the loopback address; 0 takes a free one")
	switch err := calculator.Parse(f, args); {
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprint(out, "web: the calculators and the programme as a page for the browser\n\nusage: go run ./examples/web [flags]\n\n")
		f.SetOutput(out)
		f.PrintDefaults()
		return 0
	case err != nil:
		fmt.Fprintf(errs, "%v\nweb -h lists the flags.\n", err)
		return 2
	}
	fmt.Fprintln(errs, "building the page; the first time takes a minute")
	page, err := build(ctx)
	if err == nil {
		if *folder != "" {
			err = write(out, *folder, page)
		} else {
			err = serve(ctx, out, *port, page)
		}
	}
	if err != nil {
		fmt.Fprintln(errs, err)
		return 1
	}
	return 0
}

func write(out io.Writer, folder string, page []byte) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	file := filepath.Join(folder, "index.html")
	if err := os.WriteFile(file, page, 0o644); err != nil { //nolint:gosec // a page is for everybody
		return err
	}
	fmt.Fprintf(out, "%s is the page, %.2f MB: put it on any static host, or open it from the disk\n", file, float64(len(page))/1e6)
	return nil
}

// serve serves the page on the loopback address until ctx is done.
func serve(ctx context.Context, out io.Writer, port int, page []byte) error {
	l, err := (&net.ListenConfig{}).Listen(ctx, "tcp", fmt.Sprintf("127.0.0.1:%d", port))
	if err != nil {
		return fmt.Errorf("%w; -port 0 takes a free port", err)
	}
	fmt.Fprintf(out, "http://%s/ is the page; Ctrl-C ends it\n", l.Addr())
	s := &http.Server{Handler: handler(page), ReadHeaderTimeout: 10 * time.Second}
	done := context.AfterFunc(ctx, func() { s.Close() }) //nolint:errcheck // it ends anyway
	defer done()
	if err := s.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// handler answers with the page and nothing else.
func handler(page []byte) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/" {
			http.NotFound(w, r)
			return
		}
		h := w.Header()
		h.Set("Content-Type", "text/html; charset=utf-8")
		h.Set("Content-Security-Policy", "frame-ancestors 'none'") // the rest stands in the page
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Cache-Control", "no-cache")
		if r.Method != http.MethodHead {
			w.Write(page) //nolint:errcheck // the reader went away
		}
	})
}
