package browser_test

import (
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
	for (const name of ["key", "getItem", "setItem", "removeItem"]) {
		if (name !== "getItem") wrap(Storage.prototype, name);
	}
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

var storeCalls = []string{"length", "key", "getItem", "setItem", "removeItem", "open", "transaction", "all"}

// Whichever call of a store throws, and from whichever moment on, the page goes on, and a cup whose catalyst is in never
// shows its dose again.
func TestAStoreThatThrows(t *testing.T) {
	url := prefixed(t, thrower)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		for _, call := range storeCalls {
			for _, moment := range []string{"weighing", "catalyst", "reload"} {
				what := call + " from the " + moment + " on"
				s.Open(url)
				s.Script(nil, `sessionStorage.clear()`)
				forget(s)
				s.Refresh()
				ready(s)
				atBench(s)
				breaks := func(at string) {
					if at == moment {
						s.Script(nil, `breakStore(arguments[0])`, call)
					}
				}
				breaks("weighing")
				do(s, "sheet", "weigh", "")
				do(s, "weighed", "", "")
				breaks("catalyst")
				tap(s, "#catalyst-in")
				s.Wait(".clock")
				breaks("reload")
				s.Refresh()
				ready(s)
				goTo(s, "cup")
				assert.False(t, s.Has("#catalyst-in"), what)
				if call == "setItem" || call == "all" {
					assert.Contains(t, shown(s, "#notice"), notKept, what)
				}
				goTo(s, "settings")
				fill(s, "name", "Tern")
				assert.Equal(t, "Tern", s.Value(control("name")), what)
			}
		}
		s.Faults()
	})
}
