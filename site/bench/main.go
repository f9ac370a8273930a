// Command bench measures the page against its budgets and prints one figure a line: name, value, unit, limit (or "-").
// Speed is given as a ratio, to an empty Go WebAssembly page or to a fixed piece of work in the same run, so that it says
// the same on any machine.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"

	"shedreckoner/site/pack"
)

const emptyProgram = "shedreckoner/site/browser/empty"

const sizeLimit = 1.3e6 // bytes of a first visit

func main() {
	log.SetFlags(0)
	only := flag.String("only", "", "regular expression for the parts to measure: packages, size, native, heap, start, visit, press, large, draws, functions")
	flag.Parse()
	wanted, err := regexp.Compile(*only)
	if err == nil {
		err = measure(context.Background(), wanted.MatchString)
	}
	if err != nil {
		log.Fatal(err)
	}
}

// part is something that is measured, by its name.
type part struct {
	name    string
	measure func() error
}

// measured measures the wanted parts, and gives all that is over its limit.
func measured(wanted func(name string) bool, parts ...part) (over error) {
	for _, p := range parts {
		if wanted(p.name) {
			over = errors.Join(over, p.measure())
		}
	}
	return over
}

// measure packs and serves the page and the empty one, and measures all that has a budget.
func measure(ctx context.Context, wanted func(name string) bool) error {
	empty, err := pack.Serve(ctx, emptyProgram, "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer empty.Close()
	page, err := pack.Serve(ctx, pack.Program, "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer page.Close()
	return errors.Join(
		measured(wanted,
			part{"packages", func() error { return packages(ctx, pack.Program) }}, part{"size", func() error { return size(page.Sizes) }},
			part{"native", native}, part{"heap", heap}),
		speed(ctx, wanted, page.URL, empty.URL))
}

// size prints what a first visit loads from a host, by file.
func size(sizes map[string]int) error {
	total := 0
	for _, name := range slices.Sorted(maps.Keys(sizes)) {
		fmt.Printf("size/%s %d bytes -\n", name, sizes[name])
		total += sizes[name]
	}
	return figure("size", float64(total), "bytes", sizeLimit)
}

// figure prints a figure that has a limit, and fails if it is over it.
func figure(name string, value float64, unit string, limit float64) error {
	text, most := plain(value), plain(limit)
	fmt.Println(name, text, unit, most)
	if value > limit {
		return fmt.Errorf("%s is over its limit: %s %s, limit %s", name, text, unit, most)
	}
	return nil
}

// plain writes a number without an exponent, to three places.
func plain(value float64) string {
	return strconv.FormatFloat(math.Round(value*1000)/1000, 'f', -1, 64)
}

func median(values []float64) float64 { return quantile(values, 0.5) }

// quantile is the smallest of the values that a share of them doesn't exceed.
func quantile(values []float64, share float64) float64 {
	return slices.Sorted(slices.Values(values))[int(math.Ceil(share*float64(len(values))))-1]
}
