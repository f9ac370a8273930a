package webdriver

import (
	"strings"
	"time"
)

// settle brings an element into sight and waits until it stays where it is: a driver asks where an element is and then
// clicks there, and what moves meanwhile isn't hit. From then on the page notes what reaches it of a click.
const settle = `
	const [css, done] = arguments;
	const frame = () => new Promise((next) => { requestAnimationFrame(() => next()); setTimeout(next, 100); });
	const place = () => {
		const box = document.querySelector(css)?.getBoundingClientRect();
		return box ? [box.x, box.y, box.width, box.height].join() : "";
	};
	(async () => {
		const element = document.querySelector(css);
		const box = element?.getBoundingClientRect(); // what is in the window is left where it is
		if (box && (box.top < 0 || box.left < 0 || box.bottom > innerHeight || box.right > innerWidth)) {
			element.scrollIntoView({ block: "nearest", inline: "nearest", behavior: "instant" });
		} else if (box?.width && !element.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2))) {
			element.scrollIntoView({ block: "center", behavior: "instant" }); // it came to lie under a bar, as after a way back
		}
		for (let before = null, tries = 0; tries < 50 && (before !== place() || !before); tries++) {
			before = place();
			await frame();
			await frame();
		}
		if (!globalThis.webdriverClick) {
			for (const kind of ["pointerdown", "mousedown", "mouseup", "click"]) {
				addEventListener(kind, (e) => webdriverClick.push(kind + " on " + (e.target.id || e.target.localName)), true);
			}
		}
		globalThis.webdriverClick = [];
		const settled = document.querySelector(css);
		done(!!settled && !settled.matches("option, :disabled"));
	})();`

// Click waits for an element, until it stays where it is, and clicks it. It sees to it that the click arrives: one of which
// nothing reached the page was lost by the driver, and is made once more; one that the page lost ends the test.
func (s *Session) Click(css string) {
	s.t.Helper()
	for try := 1; ; try++ {
		s.Wait(css)
		var isHeard bool // an option is chosen without a mouse
		s.AsyncScript(&isHeard, settle, css)
		err := s.tryElement(css, "/click", nil)
		// WebKit's driver now and then names no reason, or says that something lay over the element, as while a sheet goes; then
		// it is the page that says whether it was clicked.
		if err != nil && !(isHeard && (isCode(err, "unknown error") || isCode(err, "element click intercepted"))) {
			s.t.Fatalf("%s: /click %s: %v", s.Engine, css, err)
		}
		if !isHeard {
			return
		}
		switch got := s.clicked(); {
		case got == "click":
			return
		case got != "":
			s.t.Fatalf("%s: %s: the page got %s, and no click", s.Engine, css, got)
		case try == 2:
			s.t.Fatalf("%s: %s: two clicks, and nothing of them reached the page (%v); there lies %s", s.Engine, css, err, s.over(css))
		}
	}
}

// clicked waits until a click has arrived, and else gives what did. A page that was left has had its click.
func (s *Session) clicked() string {
	var got []string
	for deadline := time.Now().Add(time.Second); ; time.Sleep(20 * time.Millisecond) {
		err := s.try("POST", "/execute/sync", script(`return globalThis.webdriverClick ?? ["click"]`, nil), &got)
		if err != nil || len(got) > 0 && strings.HasPrefix(got[len(got)-1], "click") {
			return "click"
		}
		if time.Now().After(deadline) {
			return strings.Join(got, ", ")
		}
	}
}

// over tells what lies where the middle of an element is, for a click that didn't arrive.
func (s *Session) over(css string) string {
	var what string
	s.Script(&what, `
		const box = document.querySelector(arguments[0])?.getBoundingClientRect();
		if (!box) return "nothing: it is gone";
		const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
		return top?.outerHTML.slice(0, 200) + " at " + [box.x, box.y, box.width, box.height, innerWidth, innerHeight, scrollY].join();`, css)
	return what
}
