package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// lateDatabase is a phone on which the database opens only after the page has stopped waiting for it, once a test says so.
// Of the page's ten seconds each takes thirty milliseconds; how long it waited is noted.
const lateDatabase = `
	globalThis.waited = 0;
	if (sessionStorage.getItem("test.late")) {
		const later = globalThis.setTimeout, open = IDBFactory.prototype.open;
		globalThis.setTimeout = (f, ms, ...args) => {
			if (ms > 5000 && String(args[0]).includes("too slow")) { waited = Math.max(waited, ms); ms = ms * 3 / 100; }
			return later(f, ms, ...args);
		};
		IDBFactory.prototype.open = function (...args) {
			const request = open.apply(this, args);
			Object.defineProperty(request, "onsuccess", { set(f) { request.addEventListener("success", () => later(() => { f.call(request); globalThis.came = true; }, 1500)); } });
			return request;
		};
	}`

// inDatabase is the job's texts in the database, as they lie on the disk.
func inDatabase(s *webdriver.Session) (text string) {
	s.AsyncScript(&text, `
		const done = arguments[0];
		const opening = indexedDB.open("shedreckoner", 1);
		opening.addEventListener("success", () => {
			const reading = opening.result.transaction("kept").objectStore("kept").getAll();
			reading.onsuccess = () => { opening.result.close(); done(reading.result.join("\n")); };
		});`)
	return text
}

// A database that takes more than ten seconds to open isn't waited for: the page starts with what the quick store holds and
// goes on keeping there. The database, of which it knows nothing, is not written over, not when it comes after all; the next
// start reads the newer of both.
func TestADatabaseThatOpensTooLate(t *testing.T) {
	url := prefixed(t, lateDatabase)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(url)
		ready(s)
		settle := func() {
			s.AsyncScript(nil, `const done = arguments[0]; addEventListener("shed-settled", () => done(), { once: true }); shedStore.settle();`)
		}
		goTo(s, "settings")
		fill(s, "name", "First")
		require.Equal(t, "First", keptName(s))
		settle()
		require.Contains(t, inDatabase(s), "First")

		s.Script(nil, `sessionStorage.setItem("test.late", "yes")`)
		s.Refresh()
		ready(s)
		var waited float64
		s.Script(&waited, `return waited`)
		assert.EqualValues(t, 10_000, waited, "milliseconds")
		goTo(s, "settings")
		assert.Equal(t, "First", s.Value(control("name")))
		fill(s, "name", "Second")
		assert.Equal(t, "Second", keptName(s), "the quick store goes on")
		s.Until("the database comes after all", func() (came bool) { s.Script(&came, `return !!globalThis.came`); return came })
		fill(s, "name", "Third")
		require.Equal(t, "Third", keptName(s))
		settle()
		held := inDatabase(s)
		assert.Contains(t, held, "First")
		assert.NotContains(t, held, "Second")
		assert.NotContains(t, held, "Third", "nothing is known of what it holds")

		s.Script(nil, `sessionStorage.clear()`)
		s.Refresh()
		ready(s)
		goTo(s, "settings")
		assert.Equal(t, "Third", s.Value(control("name")), "the newer of both")
		settle()
		assert.Contains(t, inDatabase(s), "Third")
	})
}
