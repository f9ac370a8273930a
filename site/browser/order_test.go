package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// tenThings is a rolled and sanded deck: gel coat and catalyst, a syringe, cups, rollers, tape, gloves, acetone, discs and a
// mask, and release film: eleven things.
const tenThings = twoDecks + `
buildup.1.step = 1 2
buildup.1.step.1.release = film
buildup.1.step.2.kind = sand
buildup.1.step.2.taken = 60 µm
surface.1.ground = polyester
surface.2.ground = polyester
surface.1.prepared = both
surface.2.prepared = both
surface.1.prepared-grade = P120
surface.2.prepared-grade = P120
surface.1.ground-age = 30 d
surface.2.ground-age = 30 d
card.gelcoat.stock = 
`

// What is seen of the list without scrolling, on a phone with the bars in their places.
const seenOfTheList = `
	const rows = [...document.querySelectorAll(".shoprow")].map((e) => e.getBoundingClientRect());
	const act = document.getElementById("act").getBoundingClientRect().top;
	const room = act - document.getElementById("top").getBoundingClientRect().bottom;
	return { Rows: rows.length, Room: room, Whole: rows.at(-1).bottom - rows[0].top, Tall: Math.max(...rows.map((b) => b.height)) };`

// Ten things stand on one screen of a phone, a line each. A tick is kept over a reload; a thing opens to its two ways to buy,
// and the list goes the one that is chosen; what stops a build-up goes out with the list by every way.
func TestTheShoppingList(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		withJob(s, tenThings)
		goTo(s, "order")
		workedOut(s)
		var got struct {
			Rows              int
			Room, Whole, Tall float64
		}
		s.Script(nil, `scrollTo(0, 0)`)
		s.Script(&got, seenOfTheList)
		assert.Equal(t, 11, got.Rows)
		assert.LessOrEqual(t, got.Whole, got.Room, "all of them between the header and the bars")
		assert.LessOrEqual(t, got.Tall, 56.0, "a line a thing")

		pressed := func() string {
			var is string
			s.Script(&is, `return document.getElementById("do-bought-gelcoat").getAttribute("aria-pressed")`)
			return is
		}
		assert.Equal(t, "false", pressed())
		tap(s, "#do-bought-gelcoat")
		assert.Equal(t, "true", pressed())
		s.Refresh()
		ready(s)
		s.Wait(".screen-order")
		workedOut(s)
		assert.Equal(t, "true", pressed(), "it is kept")

		first := shown(s, `[id="order.gelcoat"] .buy`)
		do(s, "sheet", "order.gelcoat", "")
		ways := shown(s, "[id=\"ways-gelcoat\"]")
		for _, want := range []string{"Before you start", "All at once", "runs short in 1 job in", "likely left:", "good for 6 months", "for repairs"} {
			assert.Contains(t, ways, want)
		}
		tap(s, `[id="way-once-gelcoat"]`)
		workedOut(s)
		s.Until("the chosen way", func() bool { return s.Has(`[id="way-once-gelcoat"][aria-pressed="true"]`) })
		tap(s, "#sheet-close")
		assert.NotEqual(t, first, shown(s, `[id="order.gelcoat"] .buy`), "more is bought at once")
		assert.Contains(t, shown(s, `[id="order.gelcoat"]`), "was ticked for", "and the tick was for less")

		assert.NotContains(t, shown(s, "#order-cautions"), "A build-up doesn't hold")
		goTo(s, "surfaces")
		forget(s) // the job before was changed, so it is newer than one that is put there
		withJob(s, strings.Replace(tenThings, "ground = polyester", "ground = polystyrene", -1))
		goTo(s, "order")
		workedOut(s)
		stop := "A build-up doesn't hold:"
		assert.Contains(t, shown(s, "#order-cautions"), stop)
		s.Script(nil, `did.copied = ""; did.saved = null`)
		do(s, "text", "", "")
		var text string
		s.Until("the copied text", func() bool { s.Script(&text, `return did.copied`); return text != "" })
		assert.Contains(t, text, stop)
		do(s, "csv", "", "")
		s.Script(&text, `return did.saved.text()`)
		assert.Contains(t, text, stop)
		assert.Contains(t, onPaper(t, s), stop)
	})
}
