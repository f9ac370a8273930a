package pack

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"os"

	"shedreckoner/site"
)

// Served is a packed page on a local address.
type Served struct {
	Result
	URL    string // with a slash at its end
	server *http.Server
	done   chan error
}

// Serve packs a program (empty: the real one) into a temporary folder and serves it at addr until Close.
func Serve(ctx context.Context, program, addr string) (*Served, error) {
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, err
	}
	dir, err := os.MkdirTemp("", "shed-reckoner-")
	if err != nil {
		listener.Close()
		return nil, err
	}
	result, err := Build(ctx, Options{Out: dir, Program: program})
	if err != nil {
		listener.Close()
		os.RemoveAll(dir)
		return nil, err
	}
	s := &Served{
		Result: result,
		URL:    fmt.Sprintf("http://%s/", listener.Addr()),
		server: &http.Server{Handler: site.Handler(result.Folder)},
		done:   make(chan error, 1),
	}
	go func() {
		err := s.server.Serve(listener)
		os.RemoveAll(dir)
		s.done <- err
	}()
	return s, nil
}

// Wait returns when the server ends, with the reason.
func (s *Served) Wait() error { return <-s.done }

// Close ends the server and removes the temporary folder.
func (s *Served) Close() {
	s.server.Close()
	s.Wait()
}
