package browser_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// lateDatabase is a phone on which the database opens, once a test says that it is late, only when the test has it come. Of the page's ten seconds each takes thirty milliseconds; how long it waited is noted.
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
			Object.defineProperty(request, "onsuccess", { set(f) { request.addEventListener("success", () => { globalThis.come = () => f.call(request); }); } });
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

// settle waits until the page says whether the disk has what it keeps.
func settle(s *webdriver.Session) (isDurable bool) {
	s.AsyncScript(&isDurable, `const done = arguments[0]; addEventListener("shed-settled", (e) => done(e.detail), { once: true }); shedStore.settle();`)
	return isDurable
}

const (
	mayBeOlder = "what is shown may be older"
	mayBeLost  = "This clock may be lost"
)

// A database that takes more than ten seconds to open isn't waited for: the page starts with what the quick store holds, says
// that this may be older, and is used meanwhile. Once the database comes, what was typed is written to it.
func TestADatabaseThatOpensTooLate(t *testing.T) {
	url := prefixed(t, lateDatabase)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(url)
		ready(s)
		goTo(s, "settings")
		fill(s, "name", "First")
		require.Equal(t, "First", keptName(s))
		require.True(t, settle(s))
		require.Contains(t, inDatabase(s), "First")

		late := func() {
			s.Script(nil, `sessionStorage.setItem("test.late", "yes")`)
			s.Refresh()
			ready(s)
			assert.Contains(t, shown(s, "#notice"), mayBeOlder)
		}
		comes := func() {
			s.Until("the database", func() (opens bool) { s.Script(&opens, `return !!globalThis.come`); return opens })
			s.Script(nil, `come()`)
			s.Until("that nothing is older any more", func() bool { return !strings.Contains(shown(s, "#page"), mayBeOlder) })
		}
		late()
		var waited float64
		s.Script(&waited, `return waited`)
		assert.EqualValues(t, 10_000, waited, "milliseconds")
		goTo(s, "settings")
		assert.Equal(t, "First", s.Value(control("name")))
		fill(s, "name", "Second")
		assert.Equal(t, "Second", keptName(s), "the quick store goes on")
		assert.False(t, settle(s))
		comes()
		require.True(t, settle(s))
		assert.Contains(t, inDatabase(s), "Second", "typed before it came")
		fill(s, "name", "Third")
		require.Equal(t, "Third", keptName(s))
		require.True(t, settle(s))
		assert.Contains(t, inDatabase(s), "Third")

		lost := func() { // what the quick store loses with a browser that is killed
			s.Script(nil, `for (const key of Object.keys(localStorage)) if (key.startsWith("shedreckoner.job.")) localStorage.removeItem(key);`)
		}
		lost()
		late()
		comes()
		assert.Equal(t, "Third", s.Value(control("name")), "the newest comes with the database")
		require.True(t, settle(s))

		lost()
		late()
		goTo(s, "settings")
		fill(s, "name", "Fourth")
		comes()
		assert.Equal(t, "Fourth", s.Value(control("name")))
		assert.Contains(t, shown(s, "#notice"), "A newer state of this job came late")
		require.True(t, settle(s))
		assert.Contains(t, inDatabase(s), "Fourth")
		tap(s, `button[data-do="theirs"]`)
		assert.Equal(t, "Third", s.Value(control("name")))
		s.Faults()
	})
}

// slowDisk has the database answer wrongly, or late, once a test says so: a transaction that aborts, a connection that is
// lost, a write that takes six seconds, one that never ends.
const slowDisk = `
	const transaction = IDBDatabase.prototype.transaction;
	globalThis.disk = "";
	IDBDatabase.prototype.transaction = function (names, mode, options) {
		const made = transaction.call(this, names, mode, options);
		if (mode !== "readwrite") return made;
		switch (disk) {
		case "abort":
			disk = "";
			queueMicrotask(() => { try { made.abort(); } catch (error) {} });
			made.commit = undefined;
			break;
		case "lost":
			disk = "";
			this.close();
			throw new DOMException("the connection was closed", "InvalidStateError");
		case "slow":
			Object.defineProperty(made, "oncomplete", { set(f) { made.addEventListener("complete", () => setTimeout(f, 6000)); } });
			break;
		case "never":
			Object.defineProperty(made, "oncomplete", { set() {} });
		}
		return made;
	};`

// A write that fails is written again; one that takes long keeps nobody waiting for ever: the clock of a cup runs after three
// seconds, and says that it may be lost until the disk has it.
func TestADiskThatFailsOrIsSlow(t *testing.T) {
	url := prefixed(t, shedClock+slowDisk)
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		goTo(s, "settings")
		for _, fault := range []string{"abort", "lost"} {
			s.Script(nil, `disk = arguments[0]`, fault)
			fill(s, "name", fault)
			require.Equal(t, fault, keptName(s))
			assert.True(t, settle(s), fault)
			assert.Contains(t, inDatabase(s), "name = "+fault)
		}
		cup := func(fault string) {
			s.Script(nil, `globalThis.breakStore = (call) => { disk = call; };`)
			s.AsyncScript(nil, takesCup, fault, "catalyst", readings)
		}
		cup("slow")
		assert.Contains(t, shown(s, "#clock-note"), mayBeLost)
		s.Script(nil, `disk = ""`)
		s.Until("that it is kept", func() bool { return !strings.Contains(shown(s, "#clock-note"), mayBeLost) })
		do(s, "end", "cup.1", "spread")

		cup("")
		assert.NotContains(t, shown(s, "#clock-note"), mayBeLost)
		do(s, "end", "cup.2", "spread")

		begun := time.Now()
		cup("never")
		assert.Less(t, time.Since(begun), 30*time.Second)
		assert.Contains(t, shown(s, "#clock-note"), mayBeLost)
		fill := func() { goTo(s, "settings"); s.Click(control("name")); s.Keys("x") }
		fill()
		assert.True(t, strings.HasSuffix(s.Value(control("name")), "x"), "the page goes on")
		s.Faults()
	})
}
