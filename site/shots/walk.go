package main

import (
	"fmt"
	"strings"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/page"
)

const (
	deepest     = 3 // sheets on each other
	mostFurther = 8 // pictures of one thing that is longer than the window
)

// walk goes through the made-up job.
type walk struct {
	s       *webdriver.Session
	look    string
	seen    map[string]bool // sheets by path
	wanted  func(name string) bool
	picture func(name string, png []byte) error
}

// everything photographs each screen with its sheets, and at last a cup from weighing to the clock.
func (w walk) everything() error {
	w.send("demo", "", "")
	for _, screen := range page.Screens {
		w.send("go", screen.Key, "")
		if err := w.photograph(screen.Key); err != nil {
			return err
		}
		if err := w.sheets(screen.Key, 1); err != nil {
			return err
		}
	}
	return w.cup()
}

// sheets photographs what can be opened from what is shown, and what can be opened from there.
func (w walk) sheets(name string, depth int) error {
	var paths []string
	w.s.Script(&paths, `
		const top = arguments[0] > 1 ? document.getElementById("sheet") : document;
		return [...new Set([...top.querySelectorAll('[data-do="sheet"]')].map((e) => e.dataset.path))];`, depth)
	for _, path := range paths {
		if w.seen[path] {
			continue
		}
		w.seen[path] = true
		w.send("sheet", path, "")
		inner := name + "." + strings.ReplaceAll(path, "/", "-")
		if err := w.photograph(inner); err != nil {
			return err
		}
		if depth < deepest {
			if err := w.sheets(inner, depth+1); err != nil {
				return err
			}
		}
		w.send("back", "", "")
	}
	return nil
}

// cup photographs what follows on a cup that was planned: each tap on its main button leads on.
func (w walk) cup() error {
	const main = `#screen button.main, .act button.main`
	w.send("go", "cup", "")
	for n := 2; n <= 4 && w.s.Has(main); n++ {
		w.s.Script(nil, `document.querySelector(arguments[0]).click()`, main)
		if err := w.photograph(fmt.Sprintf("cup-step-%d", n)); err != nil {
			return err
		}
	}
	return nil
}

// photograph takes a picture of each windowful.
func (w walk) photograph(name string) error {
	if !w.wanted(name) {
		return nil
	}
	w.s.Until("the order worked out", func() (done bool) {
		w.s.Script(&done, `return !document.getElementById("sureness")?.textContent.startsWith("Working out")`)
		return done
	})
	for n := 1; n <= mostFurther; n++ {
		var isLast bool
		w.s.Script(&isLast, windowful, w.look, n-1)
		file := name
		if n > 1 {
			file = fmt.Sprintf("%s_%d", name, n)
		}
		if err := w.picture(file, w.s.Screenshot()); err != nil || isLast {
			return err
		}
	}
	return nil
}

// windowful scrolls what is on top so many windows down, and reports whether its end is seen then.
const windowful = `
	const [look, down] = arguments;
	document.documentElement.dataset.look = look === "contrast" ? "light" : look;
	const all = [document.scrollingElement, ...document.querySelectorAll(".sheet, .sheet *")].filter((e) => {
		const overflow = getComputedStyle(e).overflowY;
		return e === document.scrollingElement || e.scrollHeight > e.clientHeight + 1 && (overflow === "auto" || overflow === "scroll");
	});
	const top = all.at(-1), bars = top === document.scrollingElement ? 0.8 : 0.9; // of the window isn't under bars
	top.scrollTop = down * top.clientHeight * bars;
	return top.scrollTop + top.clientHeight >= top.scrollHeight - 1;`

// send gives the page a message.
func (w walk) send(verb, path, text string) {
	w.s.Script(nil, `window.dispatchEvent(new CustomEvent("shed-answer", { detail: { verb: arguments[0], path: arguments[1], text: arguments[2] } }))`, verb, path, text)
}
