package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// brokenWords lists the words in some elements that don't stand on one line, or that go over the element's edge.
const brokenWords = `
	const broken = [];
	for (const e of document.querySelectorAll(arguments[0])) {
		const box = e.getBoundingClientRect();
		const walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT);
		for (let node; (node = walker.nextNode()); ) for (const word of node.data.matchAll(/\S+/g)) {
			const range = document.createRange();
			range.setStart(node, word.index);
			range.setEnd(node, word.index + word[0].length);
			const rects = [...range.getClientRects()];
			if (rects.length !== 1 || rects[0].left < box.left || rects[0].right > box.right) broken.push(word[0]);
		}
	}
	return broken;`

// Every name in the choice of shapes has its words whole, on the smallest glass and with text twice as large too.
func TestNamesOfShapesAreWhole(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric)
		for _, c := range []struct {
			width int
			text  string
		}{{360, ""}, {320, ""}, {320, "200%"}} {
			s.SetSize(c.width, 640)
			s.Script(nil, `document.documentElement.style.fontSize = arguments[0]`, c.text)
			for _, sheet := range []string{"shapes", "surface.1.shapes"} {
				goTo(s, "surfaces")
				tell(s, "sheet", "surface.1", "")
				tell(s, "sheet", sheet, "")
				var broken []string
				s.Script(&broken, brokenWords, ".sheet .tile")
				assert.Empty(t, broken, "%s at %d px, text %s", sheet, c.width, c.text)
			}
		}
	})
}

// What is typed is what is drawn: a flat trapezium looks flat at once, and where the sketch can't follow it says so.
func TestTheSketchFollowsWhatIsTyped(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, metric)
		goTo(s, "surfaces")
		unfold(s, "surface.1")
		form := func() (ratio float64) {
			s.Script(&ratio, `const box = document.querySelector(".shape .outline").getBBox(); return box.width / box.height`)
			return ratio
		}
		before := form()
		fill(s, "surface.1.width", "0.2 m")
		assert.Greater(t, form(), 2*before)
		assert.NotContains(t, shown(s, ".shape"), "not to scale")
		fill(s, "surface.1.width", "1 mm")
		assert.Contains(t, shown(s, ".shape"), "not to scale")
		fill(s, "surface.1.width", "flat")
		assert.NotContains(t, shown(s, ".shape"), "not to scale", "of what can't be read no scale is drawn")
	})
}

// The first visit, on a phone: two lines of what the page is, three ways in and the cautions, all in the first screenful.
func TestTheFirstVisitIsOneScreenful(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		var got struct {
			Lines, Below float64
			Ways         []string
		}
		s.Script(&got, `
			const lead = document.querySelector(".lead"), cautions = document.querySelector("ul.cautions").getBoundingClientRect();
			const line = parseFloat(getComputedStyle(lead).lineHeight);
			return { Lines: Math.round(lead.getBoundingClientRect().height / line), Below: cautions.bottom - document.querySelector(".bar").getBoundingClientRect().top,
				Ways: [...document.querySelectorAll("#screen h2, #screen .menu button")].map((e) => e.textContent) };`)
		assert.LessOrEqual(t, got.Lines, 2.)
		assert.LessOrEqual(t, got.Below, 0., "no caution lies under the tabs")
		assert.Equal(t, []string{"Add a surface", "Only mix a cup", "Look at a made-up job"}, got.Ways)
		do(s, "demo", "", "")
		var high float64
		s.Script(&high, `return document.querySelector(".notice .demo").getBoundingClientRect().height`)
		assert.Less(t, high, 57., "the made-up job's band is one line")
	})
}
