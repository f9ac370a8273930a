package main

import (
	"errors"
	"fmt"

	"shedreckoner/site/webdriver"
)

const (
	drawsLimit     = 1000 // ms for the simulation of an order
	drawRuns       = 7
	sliceLimit     = 12 // ms for a slice at the median
	longSliceLimit = 20 // ms for the largest
)

// draws prints how long the simulation of the made-up job's order takes in the page, from opening the list, and how long
// its slices are: a key waits for the end of one at most. The slices are the same each time, so the fastest of each counts,
// since others use the machine too.
func (b bench) draws(url string) error {
	s := b.demo(url)
	defer s.Quit()
	s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument", map[string]any{"source": timing})
	s.Script(nil, send, "go", "surfaces")
	slow(s)
	s.Refresh()
	s.Wait(`html[data-ready="yes"]`)
	best := draw(s)
	for range drawRuns - 1 {
		s.Script(nil, send, "go", "surfaces")
		s.Refresh()
		s.Wait(`html[data-ready="yes"]`)
		again := draw(s)
		if len(again.Slices) != len(best.Slices) {
			return errors.New("draws: the same simulation was cut into other slices")
		}
		best.All = min(best.All, again.All)
		for i, ms := range again.Slices {
			best.Slices[i] = min(best.Slices[i], ms)
		}
	}
	if len(best.Slices) < 2 {
		return errors.New("draws: the simulation wasn't cut into slices, so none was measured")
	}
	fmt.Printf("draws/slices %d - -\n", len(best.Slices))
	return errors.Join(
		figure("draws/page", best.All, "ms", drawsLimit),
		figure("draws/slice/median", median(best.Slices), "ms", sliceLimit),
		figure("draws/slice/longest", quantile(best.Slices, 1), "ms", longSliceLimit))
}

// drawn is the milliseconds of a simulation, and of each of its slices.
type drawn struct {
	All    float64
	Slices []float64
}

// timing keeps the milliseconds of each message that the page has posted to itself: what is long is worked out in slices, one
// a message.
const timing = `
	globalThis.slices = [];
	const plain = Object.getOwnPropertyDescriptor(MessagePort.prototype, "onmessage");
	Object.defineProperty(MessagePort.prototype, "onmessage", { ...plain, set(f) {
		plain.set.call(this, (e) => {
			const begun = performance.now();
			f(e);
			slices.push(performance.now() - begun);
		});
	} });`

func draw(s *webdriver.Session) drawn {
	var took drawn
	s.AsyncScript(&took, `
		const done = arguments[0], begun = performance.now();
		const finished = () => {
			const said = document.getElementById("sureness")?.textContent;
			return said !== undefined && !said.startsWith("Working out");
		};
		const watch = new MutationObserver(() => {
			if (slices.length > 0 && finished()) {
				watch.disconnect();
				const all = performance.now() - begun;
				setTimeout(() => done({ All: all, Slices: slices }), 100); // the last slice has ended by then
			}
		});
		watch.observe(document.body, { subtree: true, childList: true, characterData: true });
		window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: "go", path: "order", text: "" } }));`)
	return took
}
