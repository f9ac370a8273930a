package main

import (
	"context"
	"fmt"

	"shedreckoner/site/webdriver"
)

const (
	pairs    = 15
	slowdown = 4 // of the processor: a cheap phone

	startLimit = 1.5 // times the empty page
)

// bench opens the browsers that are measured.
type bench struct {
	driver *webdriver.Driver
	t      webdriver.Failer
}

func (b bench) session() *webdriver.Session { return b.driver.Session(b.t) }

// speed measures what takes a browser.
func speed(ctx context.Context, wanted func(name string) bool, page, empty string) error {
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
	return webdriver.Run(func(t webdriver.Failer) error {
		b := bench{driver, t}
		return measured(wanted,
			part{"start", func() error { return b.start(page, empty) }}, part{"visit", func() error { return b.visits(page) }},
			part{"press", func() error { return b.press(page) }},
			part{"large", func() error { return b.large(page) }}, part{"draws", func() error { return b.draws(page) }},
			part{"functions", func() error { return b.functions(page) }})
	})
}

// start prints how long the page takes to be usable, as the median ratio to the empty page.
func (b bench) start(page, empty string) error {
	var pages, empties, ratios []float64
	for i := range pairs + 1 {
		var p, e float64
		if i%2 == 0 { // each goes first as often, should that matter
			p, e = b.untilReady(page), b.untilReady(empty)
		} else {
			e, p = b.untilReady(empty), b.untilReady(page)
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
func (b bench) untilReady(url string) float64 {
	s := b.session()
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
