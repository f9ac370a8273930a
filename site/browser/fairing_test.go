package browser_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

const fillStep = "buildup.1.step.1"

// gridStep makes a fill step that is measured by a grid of 12 rows of 8 readings, 200 mm apart both ways.
func gridStep(s *webdriver.Session) {
	emptyBuildup(s)
	addStep(s, "fill")
	choose(s, fillStep+".card", "epoxy-filler")
	choose(s, fillStep+".fill-by", "grid")
	fill(s, fillStep+".columns", "8")
	fill(s, fillStep+".row-gap", "200")
	fill(s, fillStep+".column-gap", "20 cm")
	do(s, "add", fillStep+".grid", "")
}

// Readings that lie on a plane: row + column, 2 to 20 mm less 1. Over 2.2 m × 1.4 m their mean is the middle's 10 mm: 30.8 L.
const planeVolume = "30.8 L"

func reading(row, column int) string { return strconv.Itoa(row + column) }

func cellOf(row, column int) string {
	return fillStep + ".grid." + strconv.Itoa(row) + ".z." + strconv.Itoa(column)
}

func TestAGridIsTypedByKeysAlone(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		gridStep(s)
		tap(s, control(cellOf(1, 0)))
		for row := 1; row <= 12; row++ {
			for column := range 8 {
				for _, digit := range reading(row, column) {
					s.Keys(string(digit))
				}
				if row < 12 || column < 7 {
					s.Keys(webdriver.Enter)
				}
			}
		}
		assert.Equal(t, "19", s.Value(control(cellOf(12, 7))))
		assert.Contains(t, shown(s, ".datum"), "Deepest: row 12, reading 8, 19 mm to fill.")
		behind(s, fillStep, "why")
		s.Until("the volume", func() bool { return figureText(s, fillStep+".left") == planeVolume })
	})
}

func TestAGridIsPasted(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		gridStep(s)
		paste(s, control(cellOf(1, 0)), plane())
		behind(s, fillStep, "why")
		s.Until("the volume", func() bool { return figureText(s, fillStep+".left") == planeVolume })
		s.Click("#sheet-close")
		s.Wait(onSheet(fillStep))

		// a ragged paste loses nothing, and its blanks are asked about
		paste(s, control(cellOf(1, 0)), "1; ; 3; 4; 5; 6; 7; 8\n2; 3")
		assert.Contains(t, shown(s, "#notice"), "Row 2 has 2")
		assert.Contains(t, say(s, fillStep+".grid.1.z"), "reading 2 is empty")
	})
}

// The datum is laid by a slider, with the arrow keys too; filler against cutting follows at once. Laid 10 mm lower, the plane
// of 1 to 19 mm goes from −9 to 9 mm: as much is cut as is filled.
func TestTheDatumIsASlider(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		gridStep(s)
		paste(s, control(cellOf(1, 0)), plane())
		const slide = `[id="slide-` + fillStep + `.raise"]`
		s.Wait(slide)
		volumes := func() (list []string) {
			s.Script(&list, `return [...document.querySelectorAll(".trade .strong")].map((e) => e.textContent)`)
			return list
		}
		if assert.Len(t, volumes(), 2) {
			assert.Equal(t, "31 L", plain(volumes()[0]), planeVolume+", to two figures")
			assert.Equal(t, "0 L", plain(volumes()[1]))
		}
		s.Script(nil, `
			const slider = document.querySelector(arguments[0]);
			slider.focus();
			slider.value = -10;
			slider.dispatchEvent(new Event("input", { bubbles: true }));`, slide)
		assert.Contains(t, shown(s, ".slider output"), "−10 mm")
		if list := volumes(); assert.Len(t, list, 2) {
			assert.Equal(t, list[0], list[1], "filled and cut alike")
		}
		assert.Contains(t, shown(s, ".datum"), "Proudest: row 1, reading 1, 9 mm to cut.")
		s.Keys(webdriver.Right)
		assert.NotContains(t, shown(s, ".slider output"), "−10 mm", "an arrow key lays it higher")
		var focused string
		s.Script(&focused, `return document.activeElement.id`) // WebKit's window itself may have lost it
		assert.Equal(t, "slide-"+fillStep+".raise", focused, "the slider keeps the focus")
	})
}

// plane is the readings that lie on a plane, as a spreadsheet copies them.
func plane() string {
	var rows []string
	for row := 1; row <= 12; row++ {
		var cells []string
		for column := range 8 {
			cells = append(cells, reading(row, column))
		}
		rows = append(rows, strings.Join(cells, "\t"))
	}
	return strings.Join(rows, "\n")
}

func paste(s *webdriver.Session, css, text string) {
	tap(s, css)
	s.Script(nil, `
		const data = new DataTransfer();
		data.setData("text/plain", arguments[1]);
		document.querySelector(arguments[0]).dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));`, css, text)
}

// Two coats of 400 µm wet, sanded by 700: more is taken than there is. The step says so and what helps, the budget too.
func TestABudgetThatFailsSaysWhatHelps(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		measured(s)
		emptyBuildup(s)
		addStep(s, "coat")
		choose(s, "buildup.1.step.1.card", "gelcoat")
		choose(s, "buildup.1.step.1.method", "nap-roller")
		fill(s, "buildup.1.step.1.film", "800")
		addStep(s, "sand")
		choose(s, "buildup.1.step.2.by", "taken")
		fill(s, "buildup.1.step.2.taken", "700")
		assert.Contains(t, shown(s, `[id="findings-buildup.1.step.2"]`), "More is taken off here than there is. Put on more film, or take less.")
		closeSheets(s)
		assert.Contains(t, shown(s, `[id="verdict-buildup.1"]`), "Doesn't hold")
		assert.Contains(t, shown(s, `[id="findings-buildup.1"]`), "Step 2. More is taken off here than there is.")
		unfold(s, "buildup.1.budget")
		assert.Contains(t, shown(s, `[id="why-buildup.1.need.0"]`), "put on at least")
	})
}
