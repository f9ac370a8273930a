package browser_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// thrower makes each call of the browser's stores throw from the moment when a test names it, over a reload too.
const thrower = `
	const broken = () => sessionStorage.getItem("test.broken") || "";
	const wrap = (proto, name) => {
		const real = proto[name];
		proto[name] = function (...args) {
			if (this !== sessionStorage && (broken() === name || broken() === "all")) throw new DOMException("no", "SecurityError");
			return real.apply(this, args);
		};
	};
	globalThis.breakStore = (name) => sessionStorage.setItem("test.broken", name);
	const get = Storage.prototype.getItem;
	for (const name of ["key", "setItem", "removeItem"]) wrap(Storage.prototype, name);
	Storage.prototype.getItem = function (key) {
		if (this !== sessionStorage && ["getItem", "all"].includes(get.call(sessionStorage, "test.broken"))) throw new DOMException("no", "SecurityError");
		return get.call(this, key);
	};
	const length = Object.getOwnPropertyDescriptor(Storage.prototype, "length");
	Object.defineProperty(Storage.prototype, "length", { get() {
		if (this !== sessionStorage && ["length", "all"].includes(broken())) throw new DOMException("no", "SecurityError");
		return length.get.call(this);
	} });
	wrap(IDBFactory.prototype, "open");
	wrap(IDBDatabase.prototype, "transaction");`

var (
	storeCalls = []string{"length", "key", "getItem", "setItem", "removeItem", "open", "transaction", "all"}
	readCalls  = []string{"length", "key", "getItem", "all"} // without which the quick store can't be read
	moments    = []string{"start", "weighing", "catalyst", "reload"}
)

// takesCup takes a cup from an empty page to its running clock, and breaks the stores on the way.
const takesCup = `
	const [call, moment, readings, done] = arguments;
	const say = (verb, path, text) => window.dispatchEvent(
		new CustomEvent("shed-answer", { detail: { verb: verb, path: path || "", text: text || "" } }));
	const find = (css) => document.querySelector(css);
	const until = (holds) => new Promise((so) => {
		const look = () => holds() ? so() : setTimeout(look, 2);
		look();
	});
	const breaks = (at) => { if (at === moment) breakStore(call); };
	(async () => {
		say("go", "cup");
		for (const [path, text] of readings) {
			say("set", path, text);
		}
		breaks("weighing");
		say("sheet", "weigh");
		find('[data-do="weighed"]').click();
		await until(() => find("#catalyst-in"));
		breaks("catalyst");
		find("#catalyst-in").click();
		await until(() => find(".clock"));
		breaks("reload");
		done();
	})();`

// Whichever call of a store throws, and from whichever moment on, the page goes on, and says so if it keeps nothing; and a cup
// whose catalyst is in never shows its dose again, not when the stores work again either.
func TestAStoreThatThrows(t *testing.T) {
	url := prefixed(t, shedClock+thrower)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		load := func() {
			s.Refresh()
			ready(s)
		}
		for _, call := range storeCalls {
			for _, moment := range moments {
				what := call + " from the " + moment + " on"
				s.Script(nil, `sessionStorage.clear()`)
				forget(s)
				if moment == "start" {
					s.Script(nil, `breakStore(arguments[0])`, call)
				}
				load()
				s.AsyncScript(nil, takesCup, call, moment, readings)
				load()
				goTo(s, "cup")
				assert.False(t, s.Has("#catalyst-in"), what)
				unread, unwritten := slices.Contains(readCalls, call), call == "setItem"
				assert.Equal(t, unread || unwritten, s.Has("#notice") && strings.Contains(shown(s, "#notice"), notKept), what)
				goTo(s, "settings")
				fill(s, "name", "Tern")
				assert.Equal(t, "Tern", s.Value(control("name")), what)
				if moment == "catalyst" && call != "all" { // where nothing at all can be noted, nothing is known of it later
					s.Script(nil, `sessionStorage.clear()`)
					load()
					goTo(s, "cup")
					assert.False(t, s.Has("#catalyst-in"), "%s, until they work again", what)
				}
			}
		}
		s.Faults()
	})
}
