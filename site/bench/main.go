// Command bench measures the page against its budgets and prints one figure a line: name, value, unit, limit (or "-").
// Speed is given as a ratio to an empty Go WebAssembly page in the same run, so that it says the same on any machine.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log"
	"maps"
	"math"
	"slices"
	"strconv"

	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

const (
	emptyProgram = "shedreckoner/site/browser/empty"

	pairs    = 15
	slowdown = 4 // of the processor: a cheap phone

	startLimit = 1.6   // times the empty page
	sizeLimit  = 1.2e6 // bytes of a first visit
)

func main() {
	log.SetFlags(0)
	program := flag.String("program", pack.Program, "package to measure")
	flag.Parse()
	if err := measure(context.Background(), *program); err != nil {
		log.Fatal(err)
	}
}

// measure packs and serves both pages, and measures all that has a budget.
func measure(ctx context.Context, program string) error {
	empty, err := pack.Serve(ctx, emptyProgram, "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer empty.Close()
	page, err := pack.Serve(ctx, program, "127.0.0.1:0")
	if err != nil {
		return err
	}
	defer page.Close()
	return errors.Join(packages(ctx, program), size(page), start(ctx, page.URL, empty.URL))
}

// size prints what a first visit loads, by part.
func size(page *pack.Served) error {
	total := 0
	for _, name := range slices.Sorted(maps.Keys(page.Sizes)) {
		fmt.Printf("size/%s %d bytes -\n", name, page.Sizes[name])
		total += page.Sizes[name]
	}
	return figure("size", float64(total), "bytes", sizeLimit)
}

// start prints how long the page takes to be usable, as the median ratio to the empty page.
func start(ctx context.Context, page, empty string) (err error) {
	engine := webdriver.Chromium()
	if len(engine.Missing) > 0 {
		fmt.Println("start NOT MEASURED: this machine lacks", engine.Missing)
		return nil
	}
	driver, err := webdriver.Start(ctx, engine)
	if err != nil {
		return err
	}
	defer driver.Close()
	defer func() {
		switch p := recover().(type) {
		case nil:
		case failure:
			err = p
		default:
			panic(p)
		}
	}()
	var pages, empties, ratios []float64
	for i := range pairs + 1 {
		var p, e float64
		if i%2 == 0 { // each goes first as often, should that matter
			p, e = untilReady(driver, page), untilReady(driver, empty)
		} else {
			e, p = untilReady(driver, empty), untilReady(driver, page)
		}
		if i == 0 {
			continue // the first pair finds the machine's caches cold
		}
		pages, empties, ratios = append(pages, p), append(empties, e), append(ratios, p/e)
	}
	fmt.Printf("start/page %.0f ms -\nstart/empty %.0f ms -\n", median(pages), median(empties))
	return figure("start", median(ratios), "×empty", startLimit)
}

// untilReady visits a page in a new browser and gives the milliseconds from navigation until the program can be used.
func untilReady(driver *webdriver.Driver, url string) float64 {
	s := driver.Session(alarm{})
	defer s.Quit()
	s.CDP(nil, "Emulation.setCPUThrottlingRate", map[string]any{"rate": slowdown})
	s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument", map[string]any{"source": `
		new MutationObserver(() => {
			if (document.documentElement.dataset.ready) globalThis.readyAt ??= performance.now();
		}).observe(document, { subtree: true, attributeFilter: ["data-ready"] });`})
	s.Open(url)
	s.Wait(`html[data-ready="yes"]`)
	var ms float64
	s.Script(&ms, `return readyAt`)
	return ms
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

func median(values []float64) float64 {
	return slices.Sorted(slices.Values(values))[len(values)/2]
}

// alarm ends the measuring where a session can't go on; start recovers it.
type alarm struct{}

type failure struct{ error }

func (alarm) Helper()                           {}
func (alarm) Fatalf(format string, args ...any) { panic(failure{fmt.Errorf(format, args...)}) }
