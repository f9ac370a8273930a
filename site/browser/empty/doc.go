//go:build !(js && wasm)

// Command empty is the least Go program that the page can run: it says that it is ready and waits. The browser tests use
// it where the program does not matter, and the benchmarks measure the real one beside it.
package main

import "log"

func main() {
	log.Fatal("this program runs only in a browser: build it with GOOS=js GOARCH=wasm")
}
