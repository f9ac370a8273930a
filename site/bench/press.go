package main

import (
	"errors"
	"fmt"

	"shedreckoner/site/webdriver"
)

const (
	presses      = 200
	fewPresses   = 40   // where each takes long
	pressLimit   = 25   // ms until all is laid out, for 95 of 100
	paintedLimit = 33.4 // ms more than the empty page until it can be seen: two frames
	largeLimit   = 100  // ms until all is laid out, with the most surfaces
	drawsLimit   = 1000 // ms for the simulation of an order
	drawRuns     = 7
	sliceLimit   = 12 // ms for the largest of its slices
)

// pressing gives the milliseconds of key presses in a measure: until all is laid out, and until it can be seen. On a page
// without fields nothing is pressed.
const pressing = `
	const [times, done] = arguments;
	const field = document.querySelector('.item input[inputmode="decimal"]');
	const painted = () => new Promise((seen) => {
		const channel = new MessageChannel();
		channel.port1.onmessage = seen;
		requestAnimationFrame(() => channel.port2.postMessage(0));
	});
	(async () => {
		field?.focus();
		const took = { layout: [], painted: [] };
		const press = (i) => {
			const begun = performance.now();
			if (field) {
				field.value = (1000 + 7 * i).toString();
				field.dispatchEvent(new InputEvent("input", { bubbles: true }));
			}
			document.body.getBoundingClientRect();
			return begun;
		};
		for (let i = 0; i < times; i++) {
			const begun = press(i);
			took.layout.push(performance.now() - begun);
		}
		for (let i = 0; i < times; i++) {
			const begun = press(i);
			await painted();
			took.painted.push(performance.now() - begun);
		}
		done(took);
	})();`

type took struct{ Layout, Painted []float64 }

// press prints how long the page takes from a key press in a measure of the made-up job, beside the empty page.
func (b bench) press(page, empty string) error {
	e := b.session()
	e.Open(empty)
	e.Wait(`html[data-ready="yes"]`)
	none := pressed(e, presses)
	e.Quit()

	s := b.demo(page)
	defer s.Quit()
	s.Click(".item .line")
	s.Wait(`.item input[inputmode="decimal"]`)
	before := s.Text("main")
	all := pressed(s, presses)
	if s.Text("main") == before {
		return errors.New("press: nothing changed in the page, so nothing was measured")
	}
	fmt.Printf("press/median %s ms -\npress/empty %s ms -\npainted/median %s ms -\npainted/empty %s ms -\n",
		plain(median(all.Layout)), plain(median(none.Layout)), plain(median(all.Painted)), plain(median(none.Painted)))
	return errors.Join(
		figure("press", quantile(all.Layout, 0.95), "ms", pressLimit),
		figure("painted", quantile(all.Painted, 0.95)-median(none.Painted), "ms above empty", paintedLimit),
		draws(s))
}

// demo opens the page with the made-up job.
func (b bench) demo(page string) *webdriver.Session {
	s := b.session()
	s.Open(page)
	s.Wait(`html[data-ready="yes"]`)
	s.Click(`[data-do="demo"]`)
	s.Wait(".demo")
	return s
}

func pressed(s *webdriver.Session, times int) took {
	slow(s)
	var t took
	s.AsyncScript(&t, pressing, times)
	return t
}

// drawn is the milliseconds of a simulation, and of each of its slices.
type drawn struct {
	All    float64
	Slices []float64
}

// draws prints how long the simulation of the made-up job's order takes in the page, from opening the list, and how long
// the largest of its slices is: a key waits for the end of one at most. The slices are the same each time, so the fastest of
// each counts, since others use the machine too.
func draws(s *webdriver.Session) error {
	best := draw(s)
	for range drawRuns - 1 {
		s.Click("#tab-surfaces")
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
	fmt.Printf("draws/slices %d - -\ndraws/slice/median %s ms -\n", len(best.Slices), plain(median(best.Slices)))
	return errors.Join(
		figure("draws/page", best.All, "ms", drawsLimit),
		figure("draws/slice", quantile(best.Slices, 1), "ms", sliceLimit))
}

func draw(s *webdriver.Session) drawn {
	var took drawn
	s.AsyncScript(&took, `
		const done = arguments[0], slices = [], later = window.setTimeout;
		window.setTimeout = (f, ms, ...what) => later(() => {
			const begun = performance.now();
			f(...what);
			if (what[0]?.type === "shed-later") slices.push(performance.now() - begun);
		}, ms);
		const begun = performance.now();
		const finished = () => document.querySelector('#screen [id$=".enough"]');
		const watch = new MutationObserver(() => {
			if (finished()) {
				watch.disconnect();
				const all = performance.now() - begun;
				later(() => { // the last slice has ended by then
					window.setTimeout = later;
					done({ All: all, Slices: slices });
				}, 100);
			}
		});
		watch.observe(document.body, { subtree: true, childList: true });
		document.getElementById("tab-order").click();`)
	return took
}

// large prints how long a key press takes in a job of the most surfaces.
func (b bench) large(page string) error {
	saved, err := checkedJob()
	if err != nil {
		return err
	}
	s := b.session()
	defer s.Quit()
	s.Open(page)
	s.Wait(`html[data-ready="yes"]`)
	s.Script(nil, `localStorage.setItem("shedreckoner.job.a", arguments[0])`, saved)
	s.Refresh()
	s.Wait(`html[data-ready="yes"]`)
	s.Click(".item .line")
	s.Wait(`.item input[inputmode="decimal"]`)
	t := pressed(s, fewPresses)
	fmt.Printf("press/%d/median %s ms -\n", mostSurfaces, plain(median(t.Layout)))
	return figure(fmt.Sprintf("press/%d", mostSurfaces), quantile(t.Layout, 0.95), "ms", largeLimit)
}
