package view_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

func madeUp(screen string) *page.State {
	s, _ := page.Start(nil, noon)
	return do(do(s, "demo", "", ""), "go", screen, "")
}

// written writes a figure in a scale, with three digits.
func written[Q unit.Quantity](f working.Figure[Q], scale unit.Scale) string {
	return strings.ReplaceAll(unit.Write(float64(f.Value), scale, 3), "\u00a0", " ")
}

// rowsIn gives the lines of a list: what each leads to, and what it says.
func rowsIn(markup string) (list []button) {
	for _, b := range buttonsOf(markup) {
		if b.do == "sheet" {
			b.label = strings.ReplaceAll(b.label, "\u00a0", " ")
			list = append(list, b)
		}
	}
	return list
}

// Each surface's line leads to it and says its own name, what it gets and its own area; together they are the area above.
func TestEachSurfacesLineIsItsOwn(t *testing.T) {
	s := madeUp("surfaces")
	html := view.Page(s).String()
	rows, sum := rowsIn(regionOf(t, html, "list-surface")), 0.
	require.Len(t, rows, len(s.Plan.Job.Surfaces))
	for i, p := range s.Plan.Surfaces() {
		typed := s.Plan.Job.Surfaces[i]
		gets := s.Doc().Get(typed.Buildup + ".name")
		assert.Equal(t, typed.Path, rows[i].path)
		assert.Equal(t, typed.Name+" "+words.SurfaceLine(typed, gets)+" "+written(p.Area, unit.InSquareMetre), rows[i].label)
		sum += float64(p.Area.Value)
		sheet := view.Page(do(s, "sheet", typed.Path, "")).String()
		assert.Contains(t, textIn(regionOf(t, sheet, "measured-"+typed.Path)), written(p.Area, unit.InSquareMetre))
	}
	assert.Contains(t, textIn(regionOf(t, html, "fig-area")), strings.ReplaceAll(unit.Write(sum, unit.InSquareMetre, 3), "\u00a0", " "))
	open := view.Page(do(s, "set", s.Plan.Job.Surfaces[0].Path+".height", "")).String()
	assert.Contains(t, rowsIn(regionOf(t, open, "list-surface"))[0].label, words.NotMeasured)
}

// The list of a build-up is its drawing, the last step on top: each line leads to its step and says its place, its material, and
// what it adds or takes; its film is drawn 0.15 for a micron, and what takes film is marked.
func TestEachLayersLineIsItsOwn(t *testing.T) {
	s := madeUp("buildup")
	coats, fills, takings := 0, 0, 0
	for _, b := range s.Plan.Buildups() {
		html := view.Page(do(s, "go", "buildup", b.Path)).String()
		list := regionOf(t, html, "list-"+b.Path+".step")
		rows := rowsIn(list)
		require.Len(t, rows, len(b.Steps))
		for i := range b.Steps {
			step, row := &b.Steps[len(b.Steps)-1-i], rows[i]
			assert.Equal(t, step.Path, row.path)
			want := strconv.Itoa(len(b.Steps)-i) + " " + words.StepTitle(step.Job.Kind, step.Card)
			assert.True(t, strings.HasPrefix(row.label, want), "%s: %s", want, row.label)
			item := regionOf(t, html, "item-"+step.Path)
			film, says := 0., ""
			switch {
			case step.Coat != nil:
				coats++
				says, film = written(step.Added, unit.InMicrometre), unit.InMicrometre.From(float64(step.Added.Value))
				assert.Contains(t, row.label, strconv.Itoa(int(step.Coat.Coats.Value))+" × "+written(step.Coat.WetEach, unit.InMicrometre)+" wet")
			case step.Fill != nil:
				fills++
				assert.Contains(t, row.label, words.Passes(int(step.Fill.Passes.Value)))
				film = unit.InMicrometre.From(float64(step.Fill.Depth.Value))
			case step.Taken.Step != nil:
				takings++
				says, film = "− "+written(step.Taken, unit.InMicrometre), unit.InMicrometre.From(float64(step.Taken.Value))
				assert.Regexp(t, `data-is="(takes|stops)"`, strings.SplitN(item, ">", 2)[0])
			}
			assert.True(t, strings.HasSuffix(row.label, says), "%s: %s", says, row.label)
			if step.Taken.Step == nil {
				assert.NotContains(t, strings.SplitN(item, ">", 2)[0], `"takes"`)
			}
			if film == 0 {
				continue
			}
			drawn := regexp.MustCompile(`<svg x="0" y="([\d.]+)" width="88" height="([\d.]+)"`).FindStringSubmatch(item)
			require.NotNil(t, drawn, item)
			switch high := film * 0.15; {
			case high > 128:
				assert.Equal(t, "96", drawn[2], "a break stands for the rest")
				assert.Contains(t, item, `class="break"`)
				assert.Contains(t, row.label, words.DrawnShorter)
			default:
				assert.InDelta(t, max(high, 2), mustRead(t, drawn[2]), 0.06, row.label)
				assert.NotContains(t, item, `class="break"`)
				assert.Equal(t, high < 1, strings.Contains(row.label, words.DrawnThicker), row.label)
			}
		}
	}
	assert.True(t, coats > 1 && fills > 0 && takings > 1)
}

// The latest cups stand on the log, the latest first, each with its own hour, amount, end, day and reach; the others behind a
// line that counts them.
func TestEachCupsLineIsItsOwn(t *testing.T) {
	d := madeUp("log").Doc()
	for i, mixed := range []string{"111 g", "222 g", "333 g"} { // three more like the first
		path := "cup.9" + strconv.Itoa(i)
		for _, l := range d.Lines() {
			if key, isFirst := strings.CutPrefix(l.Path, "cup.1."); isFirst {
				d = d.Set(path+"."+key, l.Text)
			}
		}
		d = d.Set(path+".mixed", mixed).Set(path+".covered", mixed[:1]+" m²").Set("cup", strings.Join(append(d.Items("cup"), "9"+strconv.Itoa(i)), " "))
	}
	s := do(of(t, d), "go", "log", "")
	cups := page.OpenCups(s.Doc(), page.Ended)
	require.Len(t, cups, 5)
	line := func(path string) string {
		c := s.Plan.Job.CupByPath(path)
		small := words.CupSmall(s.Doc().Get(path+".end"), words.Date(s.Doc().Get(path+".day"), noon.Date), written(c.SurfaceTemp, unit.InCelsius))
		text := s.HourOf(path+".weighed") + " " + s.Plan.Job.CardByKey(c.Card).Name + ", " + s.Doc().Get(path+".mixed") + " " + small
		if c.Covered.Step != nil {
			text += " " + written(c.Covered, unit.InSquareMetre)
		}
		return strings.ReplaceAll(text, "\u00a0", " ")
	}
	rows := rowsIn(regionOf(t, view.Page(s).String(), "list-cup"))
	require.Len(t, rows, 4)
	for i := range 3 {
		cup := cups[len(cups)-1-i]
		assert.Equal(t, cup, rows[i].path)
		assert.Equal(t, line(cup), strings.TrimSpace(rows[i].label))
	}
	assert.Equal(t, page.CupsSheet, rows[3].path)
	assert.Contains(t, view.Page(s).String(), words.CupsLogged(len(cups)-3))
	rest := rowsIn(regionOf(t, view.Page(do(s, "sheet", page.CupsSheet, "")).String(), "list-cups"))
	require.Len(t, rest, len(cups)-3)
	for i, row := range rest {
		cup := cups[len(cups)-4-i]
		assert.Equal(t, []string{cup, line(cup)}, []string{row.path, strings.TrimSpace(row.label)})
	}
}

// What was taken down of a cup stands under its own names.
func TestWhatWasTakenDownOfACupIsItsOwn(t *testing.T) {
	s := madeUp("log")
	for _, path := range page.OpenCups(s.Doc(), page.Ended) {
		c := s.Plan.Job.CupByPath(path)
		text := textIn(regionOf(t, view.Page(do(s, "sheet", page.Part(path, page.TakenPart), "")).String(), "taken-"+path))
		for name, value := range map[string]string{words.WeighedAt: s.HourOf(path + ".weighed"), words.CatalystThatWentIn: s.Doc().Get(path + ".dose"), words.CatalystByMass: written(c.Share, unit.InPercent),
			"Product": written(c.ProductTemp, unit.InCelsius), "Surface": written(c.SurfaceTemp, unit.InCelsius), "Air": written(c.AirTemp, unit.InCelsius), "Humidity": written(c.Humidity, unit.InPercent),
			words.UsableAsReckoned: written(c.Usable, unit.InMinute), words.GelsSoonest: written(c.Early, unit.InMinute), "Tin": c.Tin} {
			if value != "" && s.Doc().Get(path+"."+map[string]string{"Humidity": "humidity"}[name]) != "-" && strings.Contains(text, name+":") {
				assert.Contains(t, text, name+": "+strings.ReplaceAll(value, "\u00a0", " "), path)
			}
		}
		require.Contains(t, text, words.WeighedAt+":")
		require.NotNil(t, job.FieldAt(path+".dose"))
	}
}
