// Command cmd packs the page into a folder: site/ for a static host, and shed-reckoner.html as one file.
package main

import (
	"context"
	"flag"
	"fmt"
	"log"

	"shedreckoner/site/pack"
)

func main() {
	log.SetFlags(0)
	out := flag.String("out", "build", "folder to write into")
	program := flag.String("program", pack.Program, "package to compile")
	flag.Parse()
	r, err := pack.Build(context.Background(), pack.Options{Out: *out, Program: *program})
	if err != nil {
		log.Fatal(err)
	}
	if r.Left != "" {
		fmt.Println(r.Left)
	}
	fmt.Printf("version %s\n%s\n%s\n", r.Version, r.Folder, r.OneFile)
}
