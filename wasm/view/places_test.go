package view_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// What is typed of a cup, of the day, of a step or a surface stands on the sheet that leads to it, and there only: from anywhere
// the way to a field ends at its control.
func TestTheWayToAFieldEndsAtIt(t *testing.T) {
	cup := cups(t)["planned"]
	fair := fairState(t)
	log := madeUp("log")
	for sheets, c := range map[string]struct {
		s      *page.State
		screen string
		paths  string
	}{
		"":                                       {cup, "cup", "bench.now.surface-temp bench.now.amount"},
		"setup":                                  {cup, "cup", "bench.now.product-temp bench.now.scale-step bench.now.catalyst bench.now.thinner bench.now.thinner-by bench.now.pigment"},
		"setup ":                                 {with(cup, "bench.now.tool = drops"), "cup", "bench.now.drops"},
		"setup  ":                                {with(cup, "bench.now.tool = syringe", "bench.now.mark = 5 mL"), "cup", "bench.now.syringe-step bench.now.mark"},
		"how":                                    {cup, "cup", "bench.now.film"},
		"minutes":                                {cup, "cup", "bench.now.mixing bench.now.stretch"},
		"tin":                                    {cup, "cup", "bench.now.tin"},
		"space":                                  {cup, "cup", "bench.now.agency bench.now.locker"},
		"flow":                                   {cup, "cup", "bench.now.flow-thinner-1 bench.now.flow-seconds-1 bench.now.flow-thinner-2 bench.now.flow-seconds-2 bench.now.flow-wanted bench.now.flow-cup"},
		"air":                                    {cup, "cup", "day.today.low day.today.high day.today.read-temp day.today.read-humidity"},
		"air airmore":                            {cup, "cup", "day.today.read-at day.today.sunrise bench.now.ahead"},
		"calendar hours":                         {log, "log", "day.today.work-from day.today.work-to"},
		"next":                                   {cups(t)["running"], "cup", "bench.now.surface-temp bench.now.amount"},
		"buildup.1.about":                        {fair, "buildup", "buildup.1.name buildup.1.ground"},
		"buildup.1.budget buildup.1.terms":       {fair, "buildup", "buildup.1.thin-share buildup.1.removal-cv buildup.1.unfair buildup.1.strip"},
		"buildup.1.step.3":                       {fair, "buildup", "buildup.1.step.3.film buildup.1.step.3.coats buildup.1.step.3.card buildup.1.step.3.method"},
		"buildup.1.step.3 buildup.1.step.3.more": {fair, "buildup", "buildup.1.step.3.thinner buildup.1.step.3.goes buildup.1.step.3.go-takes buildup.1.step.3.wait buildup.1.step.3.patch"},
		"buildup.1.step.3 buildup.1.step.3.readings": {fair, "buildup", "buildup.1.step.3.comb.1.last-wet buildup.1.step.3.comb.1.first-dry buildup.1.step.3.comb.1.surface"},
		"putties":                      {fair, "buildup", "putty.1.name putty.1.air putty.1.part.1.mass putty.1.part.2.bulk"},
		"removals":                     {fair, "buildup", "removal.1.grade removal.1.way removal.1.takes"},
		"surface.1":                    {log, "surfaces", "surface.1.height surface.1.count surface.1.name"},
		"surface.1 surface.1.cutout.1": {log, "surfaces", "surface.1.cutout.1.diameter surface.1.cutout.1.count"},
		"surface.1 surface.1.under":    {log, "surfaces", "surface.1.ground surface.1.ground-age surface.1.prepared-grade"},
		"rest":                         {log, "log", "done.1.used done.1.temp done.1.note"},
		"tests":                        {log, "log", "test.1.card test.1.mass test.1.temp test.1.share test.1.minutes test.1.tin"},
		"cup.1":                        {log, "log", "cup.1.left cup.1.covered cup.1.gel cup.1.step cup.1.fault cup.1.note"},
	} {
		for _, path := range strings.Fields(c.paths) {
			assert.NotNil(t, job.FieldAt(path), path)
			at := c.s.PlaceOf(path)
			assert.Equal(t, c.screen, at.Screen, path)
			assert.Equal(t, strings.Fields(sheets), append([]string{}, at.Sheets...), path)
			found := do(do(c.s, "go", "sources", ""), "find", path, "")
			assert.True(t, found.IsShown(at), path)
			assert.Contains(t, view.Page(found).String(), ` id="f-`+path+`"`, path)
			elsewhere := do(found, "go", "settings", "")
			assert.False(t, elsewhere.IsShown(at), path)
			assert.True(t, strings.HasSuffix(at.Name, job.FieldAt(path).Name), "%s is called %q", path, at.Name)
		}
	}
	for _, item := range []string{"removal.1", "putty.1", "buildup.1.step.2.spot.1"} {
		found := do(do(fair, "go", "sources", ""), "find", item, "")
		assert.True(t, found.IsOpen(item), "the item itself is found open: %s", item)
		assert.NotEmpty(t, textOf(t, found, "name-"+item))
	}
	for path, name := range map[string]string{"surface.1.height": "Foredeck, height", "surface.1.cutout.1.diameter": "Foredeck, cut-out 1, diameter", "card.gelcoat.density": "Polyester gel coat, density",
		"buildup.1.step.4.film": "New parts: fair, flow coat, gel coat, step 6, film", "test.1.mass": "cup test 1, mass of the cup", "name": "name of the job"} {
		assert.Equal(t, name, plain(log.PlaceOf(path).Name), path)
	}
}
