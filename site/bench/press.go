package main

import (
	"errors"
	"fmt"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

const (
	turns     = 12 // of the page and the reference
	presses   = 12 // a turn
	fewTurns  = 6  // where each press takes long
	fewInTurn = 5

	pressLimit = 0.3 // times the reference's median
	worstLimit = 0.5 // times the reference's 95 of 100
	largeLimit = 0.6 // the same with the most surfaces
	largeWorst = 1

	phoneWidth, phoneHeight = 360, 740
)

// reference is a fixed piece of work on a blank page: a hundred labelled fields with a figure each, set by innerHTML and laid
// out. It takes its time by the machine and the browser as the page does, so that the ratio says the same on any.
const reference = `
	const [times, done] = arguments, took = [];
	document.body ??= document.createElement("body");
	for (let i = 0; i < times; i++) {
		const begun = performance.now();
		document.body.innerHTML = Array.from({ length: 100 }, (_, n) =>
			"<div><label for=f" + n + ">Field " + n + "</label> <input id=f" + n + " value=" + (i + n) + "> <output>" + ((i + n) / 7).toFixed(2) + " mm</output></div>").join("");
		document.body.getBoundingClientRect();
		took.push(performance.now() - begun);
	}
	done(took);`

// pressing types into the first field for a measure, and gives the milliseconds until all is laid out. What the page does
// when a key is answered, such as keeping the job, has its time before the next.
const pressing = `
	const [times, from, done] = arguments, took = [];
	const field = document.querySelector('.sheet input[inputmode="decimal"]');
	field.focus();
	const lull = () => new Promise((next) => setTimeout(next, 30));
	(async () => {
		for (let i = from; i < from + times; i++) {
			const begun = performance.now();
			field.value = (1000 + 7 * i).toString();
			field.dispatchEvent(new InputEvent("input", { bubbles: true }));
			document.body.getBoundingClientRect();
			took.push(performance.now() - begun);
			await lull();
		}
		done(took);
	})();`

// send is the body of a script that gives the page a message.
const send = `window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: arguments[0], path: arguments[1], text: "" } }))`

// press prints how long the page takes for a key on the sheet with most controls in the made-up job.
func (b bench) press(url string) error {
	s := b.demo(url)
	defer s.Quit()
	s.Script(nil, send, "go", "surfaces")
	screen, sheet, most := "", "", 0
	for _, of := range page.Screens {
		s.Script(nil, send, "go", of.Key)
		var paths []string
		s.Script(&paths, `return [...new Set([...document.querySelectorAll('[data-do="sheet"]')].map((e) => e.dataset.path))]`)
		for _, path := range paths {
			s.Script(nil, send, "sheet", path)
			var controls int
			s.Script(&controls, `return document.querySelector('.sheet input[inputmode="decimal"]') ? document.querySelectorAll(".sheet :is(input, select, textarea)").length : 0`)
			if controls > most {
				screen, sheet, most = of.Key, path, controls
			}
			s.Script(nil, send, "back", "")
		}
	}
	if most == 0 {
		return errors.New("press: no sheet with a field for a figure was found")
	}
	fmt.Printf("press/controls %d on %s -\n", most, sheet)
	s.Script(nil, send, "go", screen)
	s.Script(nil, send, "sheet", sheet)
	return b.byTurns(s, "press", turns, presses, pressLimit, worstLimit)
}

// large prints the same for a surface in a job of the most of them.
func (b bench) large(url string) error {
	saved, err := checkedJob()
	if err != nil {
		return err
	}
	s := b.session()
	defer s.Quit()
	s.Open(url)
	s.Wait(`html[data-ready="yes"]`)
	s.Script(nil, `localStorage.setItem("shedreckoner.job.a", arguments[0])`, saved)
	s.Refresh()
	s.Wait(`html[data-ready="yes"]`)
	s.Script(nil, send, "go", "surfaces")
	s.Script(nil, `document.querySelector('[data-do="sheet"][data-path^="surface."]').click()`)
	return b.byTurns(s, fmt.Sprintf("press/%d", mostSurfaces), fewTurns, fewInTurn, largeLimit, largeWorst)
}

// demo opens the page with the made-up job.
func (b bench) demo(url string) *webdriver.Session {
	s := b.session()
	s.Open(url)
	s.Wait(`html[data-ready="yes"]`)
	s.Script(nil, send, "demo", "")
	s.Wait(".demo")
	return s
}

// byTurns presses on the sheet that is open, by turns with the reference in another tab of the same browser, and holds the
// one against the other.
func (b bench) byTurns(s *webdriver.Session, name string, turns, presses int, limit, worst float64) error {
	page := s.Tab()
	blank := s.NewTab()
	for _, tab := range []string{blank, page} {
		s.SwitchTo(tab)
		s.SetSize(phoneWidth, phoneHeight)
		slow(s)
	}
	s.Wait(`.sheet input[inputmode="decimal"]`)
	before := s.Text(".sheet")
	var all, fixed []float64
	for turn := range turns {
		var took []float64
		s.SwitchTo(page)
		s.AsyncScript(&took, pressing, presses, turn*presses)
		all = append(all, took...)
		s.SwitchTo(blank)
		s.AsyncScript(&took, reference, presses)
		fixed = append(fixed, took...)
	}
	s.SwitchTo(page)
	if s.Text(".sheet") == before {
		return errors.New(name + ": nothing changed in the page, so nothing was measured")
	}
	for i, times := range [][]float64{all, fixed} {
		fmt.Printf("%s%s/ms %s median, %s for 95 of 100 -\n", name, []string{"", "/reference"}[i], plain(median(times)), plain(quantile(times, 0.95)))
	}
	return errors.Join(
		figure(name+"/median", median(all)/median(fixed), "×reference", limit),
		figure(name+"/95", quantile(all, 0.95)/quantile(fixed, 0.95), "×reference", worst))
}
