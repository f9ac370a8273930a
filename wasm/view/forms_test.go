package view_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

var lineID = regexp.MustCompile(`id="line-([^"]*)"`)

// form is the lines of what is open on a page, in their order: path, what stands beside and below it, and what holds while
// nothing is typed.
func form(t *testing.T, s *page.State) (lines []string) {
	t.Helper()
	html := view.Page(s).String()
	seen := html
	if s.Sheet() != "" {
		_, seen, _ = strings.Cut(html, `data-sheet="`)
	}
	for _, m := range lineID.FindAllStringSubmatch(seen, -1) {
		line, holds := regionOf(t, html, "line-"+m[1]), ""
		if found := aDefault.FindStringSubmatch(line); found != nil {
			holds = found[1]
		}
		lines = append(lines, m[1]+" | "+plain(textIn(line))+" | "+plain(holds))
	}
	return lines
}

// The fields of each sheet, in the order in which they are asked: each with the name of what it is, the unit that a bare number is
// read in, the buttons that step it where a little is corrected, its hint, and what holds while it is empty. A film's step has the
// signs about the figure, a form's line behind it.
func TestEachFieldAsksForItsOwn(t *testing.T) {
	cup, fair, demo := cups(t)["planned"], fairState(t), madeUp("log")
	const wait, patch = " | Hours since the step before, at about 20 °C h − + Not set: what depends on it stays open. | not set", " | Test patch of this layer, done on What needs a test patch stays red until its day is noted here or on the surface. | none yet"
	const alike = "How many alike − + | 1"
	catalysts, mixed := "", ""
	for _, c := range cup.Plan.Job.Cards {
		if c.Kind == material.Catalyst {
			if catalysts == "" {
				catalysts = "catalyst | Catalyst " + words.ShortName(c) // what its card takes
			}
			catalysts += " " + words.ShortName(c)
		}
		if plan.Fits("coat", c) || plan.Fits("fill", c) {
			mixed += " " + words.ShortName(c)
		}
	}
	catalysts += " |"
	for _, c := range []struct {
		s      *page.State
		sheet  string
		prefix string
		fields string
	}{
		{cup, "how", "bench.now.", `
			film | Wet film of one coat µm − + | card's largest`},
		{madeUpCup(), "how", "bench.now.", `
			film | Wet film of one coat µm − + | coat's own`},
		{with(cup, "bench.now.tool = drops"), "setup", "bench.now.", `
			product-temp | Temperature of the product − °C + | same
			drops | Drops in 1 mL, counted − + Count the drops in 1 mL yourself: bottles differ more than twofold. |
			` + catalysts + `
			thinner | Thinner % − + Counted with wax solution against the card's limit. | none
			thinner-by | Thinner is measured by mass by volume |
			pigment | Pigment paste, by mass of product % − + | none`},
		{cup, "tin", "bench.now.", `
			tin | Name of the tin A new tin, a new name: it needs its own cup test. |`},
		{cup, "air", "day.today.", `
			read-temp | Air − °C + |
			read-humidity | Humidity − % + |
			low | Lowest − °C + |
			high | Highest − °C + |`},
		{cup, "airmore", "", `
			day.today.read-at | Read at | now
			day.today.sunrise | Sunrise | 6:00
			bench.now.ahead | Coldest air in the next four hours °C − + |`},
		{cup, "flow", "bench.now.", `
			flow-thinner-1 | Thinner at the first reading % − + |
			flow-seconds-1 | First flow time, seconds − + |
			flow-thinner-2 | Thinner at the second reading % − + |
			flow-seconds-2 | Second flow time, seconds − + |
			flow-wanted | Flow time wanted, seconds − + |
			flow-cup | Flow cup ISO 2431, 4 mm ISO 2431, 3 mm ISO 2431, 5 mm ISO 2431, 6 mm |`},
		{cup, page.HoursSheet, "day.today.", `
			work-from | Work begins at | 8:00
			work-to | Work ends at | 18:00`},
		{cup, page.WeighSheet, "bench.now.", `
			amount | In the cup as weighed: the dose follows it − g + |`},
		{fair, "buildup.1.terms", "buildup.1.", `
			thin-share | Share of the area that may go thinner % − + The thin side is the film that all but this share of the area has. | 5
			removal-cv | How uneven sanding takes, sd ÷ mean % − + An assumption: log your own. | 40
			unfair | Unfairness that the board bridges, sd µm − + How far the ground lies off the plane that the board sands to. | 0
			strip | Width of the edge strip mm Along edges films run thin (× 0.7) and boards dwell (× 2): an assumption. | 25 mm`},
		{fair, "buildup.1.step.1.more", "buildup.1.step.1.", `
			alike | ` + alike + `
			raise | Datum raised by mm − + More filler, less to cut. Below zero: the other way. | 0
			cut-most | Deepest cut allowed mm − + | as read
			cut-cost | Litres filled for the cost of a litre cut − + For the best height of the datum: an assumption. | 3
			sanded-off | Share sanded off again % − + | 30
			wait` + wait + `
			patch` + patch},
		{opened(fair, "buildup.1.step.2.spot.1"), "buildup.1.step.2", "buildup.1.step.2.spot.1.", `
			is | What it is a hollow under a batten a long trough a fillet in a corner |
			radius | Radius mm |
			angle | Inside angle ° |
			length | Length mm |
			alike | ` + alike},
		{fair, "buildup.1.step.3.more", "buildup.1.step.3.", `
			thinner | Thinner % − + | none
			goes | Rounds: coated and sanded back again − + Spray, sand, find pinholes, spray again: how many times. | 1
			go-takes | Sanded back after each round µm − + | none
			wait` + wait + `
			patch` + patch},
		{fair, "buildup.1.step.3.readings", "buildup.1.step.3.comb.1.", `
			last-wet | Last wet tooth − µm + |
			first-dry | First dry tooth − µm + |
			surface | Read on All of it Foredeck |`},
		{fair, "buildup.1.step.4", "buildup.1.step.4.", `
			first | First grade | such as P220
			last | Last grade The scratch that the next layer or the polish starts from. | such as P1200`},
		{fair, "buildup.1.step.4.more", "buildup.1.step.4.", `
			grades | Grades, one after the other Left empty: the usual grades from the first to the last. | the usual ones
			wet-from | Wet by hand from An electric sander and water don't go together. | all dry
			scratch | Scratch depth ÷ grain 0.15 to 0.5: an assumption. Your own figures of what a grade takes replace it. | 0.33
			texture | Texture, peak to valley µm − + What the coat before left: the first grade flattens it. | by the method
			least | Film that must be left µm − + | as its card says
			wait` + wait},
		{fair, "buildup.1.step.5", "buildup.1.step.5.", `
			taken | Film taken − µm + | as needed`},
		{opened(fair, "removal.1"), page.RemovalsSheet, "removal.1.", `
			grade | Grade | P320
			way | Found by weighing an offcut reading the film twice a figure of my own |
			takes | Film it takes µm − + |`},
		{opened(fair, "putty.1"), page.PuttiesSheet, "putty.1.", `
			name | Name |
			part.1.what | Part resin hardener microballoons fumed silica another part |
			part.1.by | Measured by weight by volume, as poured |
			part.1.mass | Goes in g − + |
			part.1.true | True density kg/L | 1.15
			part.1.price | Price of a kilogram | no price
			part.2.what | Part resin hardener microballoons fumed silica another part |
			part.2.by | Measured by weight by volume, as poured |
			part.2.volume | Goes in mL |
			part.2.bulk | Bulk density kg/L | 0.1
			part.2.true | True density kg/L | 0.25
			part.2.price | Price of a kilogram | no price
			air | Air stirred in % − + | 0
			wanted | Putty wanted L | what the parts make
			against | Compared with Epoxy fairing filler Polyester filler (talc) Polyester filler, light Epoxy fairing filler |`},
		{demo, "cup.1", "cup.1.", `
			left | Left over weighed back − g + | the usual
			covered | Covered measured m² |
			gel | Gelled after − min + |
			step | It went on for none of the plan New parts: fair, flow coat, gel coat, step 6: Polyester gel coat Topsides: spray again, step 1: Polyester gel coat |
			fault | What went wrong nothing still tacky dry but soft wrinkled pinholes runs and sags fish-eyes the ground prints through chalky before polishing |
			note | Note |`},
		{demo, "surface.1", "surface.1.", `
			long-side | a Long side mm |
			short-side | b Side across from it mm |
			height | h Height between them mm |
			count | ` + alike + `
			name | Called |`},
		{demo, "surface.1.cutout.1", "surface.1.cutout.1.", `
			diameter | d Diameter mm |
			count | ` + alike},
		{opened(demo, "done.1"), page.RestSheet, "done.1.", `
			used | Put on, what was left over not counted kg | by its cups
			temp | Temperature of the surface °C − + |
			note | Note |`},
		{opened(demo, "test.1"), page.TestsSheet, "test.1.", `
			card | Material choose…` + mixed + ` |
			mass | Mass of the cup g − + |
			temp | Temperature of the product °C − + |
			share | Catalyst, by mass % − + |
			minutes | Minutes to gel min − + |
			tin | Name of the tin |`},
	} {
		var want []string
		for _, line := range strings.Split(strings.TrimSpace(c.fields), "\n") {
			line = strings.TrimSpace(line)
			if strings.HasSuffix(line, "|") {
				line += " "
			}
			want = append(want, c.prefix+line)
		}
		require.Equal(t, want, form(t, do(c.s, "sheet", c.sheet, "")), c.sheet)
	}
}

// What is sanded off is typed; what polish takes is planned where nothing is.
func TestWhatIsTakenIsTypedOrPlanned(t *testing.T) {
	for step, holds := range map[string]string{"buildup.1.step.3": "", "buildup.1.step.6": words.AsNeeded} {
		assert.Contains(t, form(t, do(madeUp("buildup"), "sheet", step, "")), step+".taken | Film taken − µm + | "+holds)
	}
}

// A field that may stay empty offers to; one whose first answer holds doesn't, and has it. A unit steps back from a text that has
// its own. What is refused says so.
func TestAFieldIsMarkedForWhatIsInIt(t *testing.T) {
	s := do(cups(t)["planned"], "sheet", "setup", "")
	line := func(s *page.State, path string) string { return regionOf(t, view.Page(s).String(), "line-"+path) }
	assert.NotContains(t, line(s, "bench.now.thinner-by"), `<option value="">`)
	assert.Contains(t, line(do(fairState(t), "sheet", "buildup.1.about", ""), "buildup.1.ground"), `<option value="">choose…</option>`)
	for text, isHidden := range map[string]bool{"": false, "5": false, "-5.5": false, "5 %": true, "5%": true, "5 g": true, "2' 6\"": true} {
		unit := regionOf(t, line(with(s, "bench.now.thinner = "+text), "bench.now.thinner"), "unit-bench.now.thinner")
		assert.Equal(t, isHidden, strings.Contains(unit, " hidden="), "%q", text)
	}
	for path, mode := range map[string]string{"bench.now.thinner": "decimal", "bench.now.pigment": "decimal"} {
		assert.Contains(t, line(s, path), `inputmode="`+mode+`"`)
	}
	holds := markup.Cut(view.Page(s)).Controls
	assert.Equal(t, "mass", holds["bench.now.thinner-by"].Value, "the first answer holds while none is chosen")
	assert.Empty(t, holds["bench.now.catalyst"].Value, "an optional one may stay empty")
	assert.Equal(t, "volume", markup.Cut(view.Page(with(s, "bench.now.thinner-by = volume"))).Controls["bench.now.thinner-by"].Value)
	surface := do(madeUp("surfaces"), "sheet", "surface.1", "")
	assert.Contains(t, line(surface, "surface.1.height"), `inputmode="decimal"`)
	for _, symbol := range []string{"in", "ft"} {
		assert.Contains(t, line(do(surface, "unit", "size", symbol), "surface.1.height"), `inputmode="text"`, "a number pad has no marks of feet and inches")
	}
	assert.Contains(t, line(do(surface, "unit", "size", "m"), "surface.1.height"), `inputmode="decimal"`)
	assert.Contains(t, line(surface, "surface.1.count"), `inputmode="numeric"`)
	assert.Contains(t, line(surface, "surface.1.name"), `class="words"`)
	assert.NotContains(t, line(surface, "surface.1.name"), "inputmode")
	assert.Contains(t, form(t, do(do(fairState(t), "decimal", "", "comma"), "sheet", "buildup.1.step.4.more", "")), "buildup.1.step.4.scratch | Scratch depth ÷ grain 0,15 to 0,5: an assumption. Your own figures of what a grade takes replace it. | 0,33")
}
