package browser_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/site"
	"shedreckoner/site/pack"
	"shedreckoner/site/webdriver"
)

// shedClock stands before the page's first script: a clock that only the test moves, so that no test depends on the hour
// it is run at, and counters in the place of what a phone does.
const shedClock = `
(() => {
	const Real = Date;
	const start = new Real(2026, 5, 1, 10, 0, 0).getTime();
	const read = Storage.prototype.getItem; // before a test breaks it
	const now = () => Number(read.call(localStorage, "test.now")) || start;
	globalThis.Date = class extends Real {
		constructor(...parts) { super(...(parts.length ? parts : [now()])); }
		static now() { return now(); }
	};
	globalThis.setClock = (n) => localStorage.setItem("test.now", now() + n * 1000);
	const steady = performance.now.bind(performance);
	let passed = 0;
	performance.now = () => steady() + passed * 1000; // the clock that nobody sets goes on with the other
	globalThis.passSeconds = (n) => { passed += n; setClock(n); };
	const done = globalThis.did = { beeps: 0, buzzes: 0, awake: 0, slept: 0, copied: "", saved: null };
	globalThis.AudioContext = class {
		currentTime = 0;
		state = "suspended";
		async resume() { if (this.state !== "running") { this.state = "running"; this.onstatechange(); } }
		createOscillator() { done.beeps++; return { frequency: {}, connect() {}, start() {}, stop() {} }; }
	};
	Object.defineProperty(navigator, "vibrate", { value: () => { done.buzzes++; return true; } });
	Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
		done.awake++;
		let release = () => {};
		globalThis.loseAwake = () => release(); // as a phone takes it back
		return { addEventListener(kind, f) { release = f; }, async release() { done.slept++; release(); } };
	} } });
	Object.defineProperty(navigator, "clipboard", { value: { writeText: async (text) => { done.copied = text; } } });
	const address = URL.createObjectURL;
	URL.createObjectURL = (blob) => { done.saved = blob; return address.call(URL, blob); };
	let hidden = false;
	Object.defineProperty(document, "hidden", { get: () => hidden });
	globalThis.setHidden = (to) => { hidden = to; document.dispatchEvent(new Event("visibilitychange")); };
})();
`

// inShed runs a test in each engine on a phone with an empty page, at ten in the morning of a day in June.
func inShed(t *testing.T, test func(t *testing.T, s *webdriver.Session)) {
	t.Helper()
	page := servedReal(t)
	inTab(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(shed(t, page))
		ready(s)
		test(t, s)
	})
}

// shed serves the page with the shed's clock in it.
func shed(t *testing.T, page *pack.Served) string {
	t.Helper()
	return serve(t, site.Handler(withClock(t, page).Folder)).URL
}

// withClock is a copy of the page with the shed's clock in it.
func withClock(t *testing.T, page *pack.Served) *pack.Served {
	t.Helper()
	return before(t, page, shedClock)
}

// before is a copy of the page with a script before its first one.
func before(t *testing.T, page *pack.Served, script string) *pack.Served {
	t.Helper()
	folder := copyFolder(t, page)
	name := filepath.Join(folder, page.Version, "wasm_exec.js")
	loader, err := os.ReadFile(name)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(name, append([]byte(script), loader...), 0o644))
	restamp(t, folder)
	return &pack.Served{Result: pack.Result{Folder: folder, Version: page.Version}}
}

// tap brings an element to the middle of the screen and clicks it, and waits for what is shown only once it is on the disk.
func tap(s *webdriver.Session, css string) {
	toMiddle(s, css)
	s.Click(css)
	s.Wait("html:not([data-settling])")
}

// workedOut waits until the order says how sure it is: it grows then, and what lies below moves away from a tap.
func workedOut(s *webdriver.Session) {
	s.Until("how sure the order is", func() (done bool) {
		s.Script(&done, `return !document.getElementById("sureness")?.textContent.startsWith("Working out")`)
		return done
	})
}

func toMiddle(s *webdriver.Session, css string) {
	s.Wait(css)
	workedOut(s)
	s.Script(nil, `document.querySelector(arguments[0]).scrollIntoView({ block: "center" })`, css)
}

// do taps the button that does something with a path and a text.
func do(s *webdriver.Session, verb, path, text string) {
	css := `button[data-do="` + verb + `"][data-path="` + path + `"]`
	if text != "" {
		css += `[data-text="` + text + `"]`
	}
	tap(s, css)
}

// unfold opens an item of a list, or the sheet of one, if it isn't open.
func unfold(s *webdriver.Session, item string) {
	if css := `button[data-do="open"][data-path="` + item + `"]`; s.Has(css) {
		if s.Attr(css, "aria-expanded") != "true" {
			tap(s, css)
		}
		return
	}
	if s.Has(onSheet(item)) {
		return
	}
	if way := `button[data-do="sheet"][data-path="` + item + `"]`; s.Has(way) && s.Has(`.sheet[data-sheet=""]`) || s.Has(".sheet "+way) {
		tap(s, way)
	} else {
		closeSheets(s)
		tap(s, way)
	}
	s.Wait(onSheet(item))
}

// onSheet is the sheet of a key, while it is the uppermost.
func onSheet(key string) string { return `.sheet[data-sheet="` + key + `"]` }

// closeSheets goes back to the screen.
func closeSheets(s *webdriver.Session) {
	for s.Has("#sheet-close") {
		var key string
		s.Script(&key, `return document.querySelector(".sheet").dataset.sheet`)
		s.Click("#sheet-close")
		s.Until("the sheet to go", func() bool { return !s.Has(onSheet(key)) })
	}
}

// emptyBuildup starts a build-up without steps.
func emptyBuildup(s *webdriver.Session) {
	goTo(s, "buildup")
	tap(s, "#ready-")
	s.Wait("#act-sheet")
}

// addStep puts a step on top of the build-up, and leaves its sheet open.
func addStep(s *webdriver.Session, kind string) {
	closeSheets(s)
	tap(s, "#act-sheet")
	do(s, "add", "buildup.1.step", kind)
	s.Wait(`.sheet[data-sheet^="buildup.1.step."]`)
}

// behind opens the part of an item's sheet that stands behind a setup line.
func behind(s *webdriver.Session, item, part string) {
	unfold(s, item)
	tap(s, `.sheet button[data-do="sheet"][data-path="`+item+`.`+part+`"]`)
	s.Wait(onSheet(item + "." + part))
}

// reshape gives the surface whose sheet lies open another shape.
func reshape(s *webdriver.Session, item, shape string) {
	behind(s, item, "shapes")
	do(s, "choose", item+".shape", shape)
	s.Wait(onSheet(item))
}

// goTo shows a screen.
func goTo(s *webdriver.Session, screen string) {
	way := `button[data-do="go"][data-path="` + screen + `"]`
	switch tab := "#tab-" + screen; {
	case s.Has(tab):
		way = tab
	case !s.Has(way): // it stands behind the header's button
		closeSheets(s)
		tap(s, "#open-menu")
		s.Wait(way)
	}
	tap(s, way)
	s.Wait(".screen-" + screen)
}

// visit shows any screen.
func visit(s *webdriver.Session, screen string) { goTo(s, screen) }

func control(path string) string { return `:is(input,select)[data-path="` + path + `"]` }

// fill types into a field by keys, over what is there.
func fill(s *webdriver.Session, path, text string) {
	tap(s, control(path))
	s.Keys(webdriver.Control + "a")
	if text == "" {
		s.Keys(webdriver.Backspace)
		return
	}
	s.Keys(strings.Split(text, "")...)
}

// choose picks an answer of a choice.
func choose(s *webdriver.Session, path, key string) {
	if chip := `[id="chip-` + path + `-` + key + `"]`; s.Has(chip) {
		tap(s, chip)
		s.Until(path+" = "+key, func() bool { return s.Attr(chip, "aria-pressed") == "true" })
		return
	}
	toMiddle(s, control(path))
	s.Click(control(path) + ` option[value="` + key + `"]`)
	s.Until(path+" = "+key, func() bool { return s.Value(control(path)) == key })
}

// shown is the text that can be seen of an element, spaces that don't break as plain ones. It is read in one go: a page
// that is still working out chances may replace the element between two.
func shown(s *webdriver.Session, css string) string {
	s.Wait(css)
	var text string
	s.Script(&text, `const found = document.querySelector(arguments[0]); return found ? found.innerText : ""`, css)
	return plain(text)
}

func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// say is what stands beside a field.
func say(s *webdriver.Session, path string) string { return shown(s, `[id="say-`+path+`"]`) }

// figureText is what a figure shows: a surface's area stands beside its sketch, the area in all over its list.
func figureText(s *webdriver.Session, id string) string {
	why := `[id="why-` + id + `"]`
	s.Wait(why)
	if s.Has(why + " .value") {
		return shown(s, why+" .value")
	}
	return shown(s, `:is(.measured > strong, .grand > span:nth-child(2)):has(~ `+why+`)`)
}

// tell sends the page a message of its own, as a control would.
func tell(s *webdriver.Session, verb, path, text string) {
	s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: arguments[0], path: arguments[1], text: arguments[2] } }))`, verb, path, text)
}

// fillAt goes to where something is typed, and types it.
func fillAt(s *webdriver.Session, path, text string) {
	tell(s, "find", path, "")
	fill(s, path, text)
}

// pass lets seconds go by on the shed's clock, and the page notice.
func pass(s *webdriver.Session, seconds int) {
	s.Script(nil, `
		passSeconds(arguments[0]);
		window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: "tick", path: "", text: "" } }));`, seconds)
}

// withJob loads the page with a saved job in the browser's store.
func withJob(s *webdriver.Session, lines string) {
	s.Script(nil, `localStorage.setItem("shedreckoner.job.a", arguments[0])`, job.Save(jobOf(lines), 1_000_000))
	s.Refresh()
	ready(s)
}

// jobOf is a job of its lines.
func jobOf(lines string) (d job.Document) {
	for line := range strings.Lines(lines) {
		if path, text, found := strings.Cut(strings.TrimSuffix(line, "\n"), " = "); found {
			d = d.Set(path, text)
		}
	}
	return d
}

// foredeck is the job of TestFromAnEmptyPageToAnOrderList in short.
const foredeck = `
surface = 1
surface.1.name = Foredeck
surface.1.length = 2.4
surface.1.width = 1.5
surface.1.buildup = buildup.1
surface.1.cutout = 1
surface.1.cutout.1.length = 0.5
surface.1.cutout.1.width = 0.4
buildup = 1
buildup.1.name = Deck
buildup.1.step = 1
buildup.1.step.1.kind = coat
buildup.1.step.1.card = gelcoat
buildup.1.step.1.method = nap-roller
buildup.1.step.1.film = 400
buildup.1.step.1.film-for = each
buildup.1.step.1.coats = 2
`
