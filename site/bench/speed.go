package main

import (
	"context"
	"errors"
	"fmt"

	"shedreckoner/site/webdriver"
)

const (
	pairs    = 15
	slowdown = 4 // of the processor: a cheap phone

	startLimit = 1.6 // times the empty page
)

// speed measures what takes a browser.
func speed(ctx context.Context, page, empty string) (err error) {
	engine := webdriver.Chromium()
	if len(engine.Missing) > 0 {
		fmt.Println("start and press NOT MEASURED: this machine lacks", engine.Missing)
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
	return errors.Join(start(driver, page, empty), press(driver, page, empty), large(driver, page), functions(driver, page))
}

// start prints how long the page takes to be usable, as the median ratio to the empty page.
func start(driver *webdriver.Driver, page, empty string) error {
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
	slow(s)
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

func slow(s *webdriver.Session) {
	s.CDP(nil, "Emulation.setCPUThrottlingRate", map[string]any{"rate": slowdown})
}

// alarm ends the measuring where a session can't go on; speed recovers it.
type alarm struct{}

type failure struct{ error }

func (alarm) Helper()                           {}
func (alarm) Fatalf(format string, args ...any) { panic(failure{fmt.Errorf(format, args...)}) }
