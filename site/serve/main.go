// Command serve packs the page into a temporary folder and serves it on this machine until interrupted.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log"
	"os"
	"os/signal"
	"syscall"

	"shedreckoner/site/pack"
)

func main() {
	log.SetFlags(0)
	addr := flag.String("addr", "127.0.0.1:8080", "address to serve at")
	program := flag.String("program", pack.Program, "package to compile")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	served, err := pack.Serve(ctx, *program, *addr)
	if errors.Is(err, syscall.EADDRINUSE) {
		log.Printf("%s is taken: using a free port", *addr)
		served, err = pack.Serve(ctx, *program, "127.0.0.1:0")
	}
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(served.URL)
	<-ctx.Done()
	served.Close()
}
