package page

import (
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// demoLines is the made-up job: Tern, a 7 m open launch that gets a new
// foredeck and an engine box and whose topsides are sprayed again. Nobody
// measured it, and nothing of its log was ever mixed.
const demoLines = `name = Tern (made up)
buildup = 1 2
buildup.1.name = New parts: fair, flow coat, gel coat
buildup.1.step = 1 7 2 3 8 4 5 6
buildup.1.step.1.kind = fill
buildup.1.step.1.card = epoxy-filler
buildup.1.step.1.thickness = 1.2 mm
buildup.1.step.7.kind = wash
buildup.1.step.7.wait = 168 h
buildup.1.step.8.kind = wash
buildup.1.step.2.kind = coat
buildup.1.step.2.patch = 12 May, cured hard
buildup.1.step.2.wait = 4 h
buildup.1.step.2.card = flowcoat
buildup.1.step.2.method = nap-roller
buildup.1.step.2.film = 400 µm
buildup.1.step.2.film-is = wet
buildup.1.step.2.film-for = each
buildup.1.step.2.coats = 1
buildup.1.step.3.kind = sand
buildup.1.step.3.taken = 150 µm
buildup.1.step.4.kind = coat
buildup.1.step.4.card = gelcoat
buildup.1.step.4.method = gravity-gun
buildup.1.step.4.film = 760 µm
buildup.1.step.4.film-is = cured
buildup.1.step.4.film-for = all
buildup.1.step.4.coats = 2
buildup.1.step.4.release = film
buildup.1.step.4.thinner = 5 %
buildup.1.step.4.thinner-by = mass
buildup.1.step.5.kind = sand
buildup.1.step.5.taken = 177 µm
buildup.1.step.6.kind = polish
buildup.1.step.6.card = compound
buildup.1.step.6.taken = 5 µm
buildup.2.name = Topsides: spray again
buildup.2.step = 1 2 3
buildup.2.step.1.kind = coat
buildup.2.step.1.card = gelcoat
buildup.2.step.1.method = gravity-gun
buildup.2.step.1.film = 700 µm
buildup.2.step.1.film-is = cured
buildup.2.step.1.film-for = all
buildup.2.step.1.coats = 2
buildup.2.step.1.release = film
buildup.2.step.1.thinner = 5 %
buildup.2.step.1.thinner-by = mass
buildup.2.step.2.kind = sand
buildup.2.step.2.taken = 150 µm
buildup.2.step.3.kind = polish
buildup.2.step.3.card = compound
buildup.2.step.3.taken = 5 µm
card.gelcoat.pack.1.price = 19.50
card.gelcoat.pack.2.price = 84
card.gelcoat.pack.3.price = 299
card.epoxy-filler.pack.1.price = 29
card.epoxy-filler.pack.2.price = 35
card.epoxy-filler.pack.3.price = 129
card.flowcoat.pack.1.price = 17
card.flowcoat.pack.2.price = 79
card.flowcoat.pack.3.price = 290
card.wax-solution.pack.1.price = 6
card.wax-solution.pack.2.price = 32
card.ketone-peroxide.pack.1.price = 3.20
card.ketone-peroxide.pack.2.price = 5
card.ketone-peroxide.pack.3.price = 11
card.ketone-peroxide.pack.4.price = 39
card.styrene.pack.1.price = 8.50
card.styrene.pack.2.price = 14
card.styrene.pack.3.price = 52
card.compound.pack.1.price = 17
card.compound.pack.2.price = 29
card.compound.pack.3.price = 75
card.gloves.pack.1.price = 2.90
card.gloves.pack.2.price = 9.50
card.acetone.pack.1.price = 9.50
card.acetone.pack.2.price = 42
card.disc.pack.1.price = 9
card.disc.pack.2.price = 39
card.cup.pack.1.price = 3.90
card.cup.pack.2.price = 15
card.roller.pack.1.price = 4.50
card.roller.pack.2.price = 38
card.tape.pack.1.price = 5.80
card.filter.pack.1.price = 4.50
card.filter.pack.2.price = 18
card.release-film.pack.1.price = 7.50
card.release-film.pack.2.price = 29
card.sheeting.pack.1.price = 12
card.pad.pack.1.price = 16
card.mask.pack.1.price = 3.20
card.mask.pack.2.price = 26
card.cartridges.pack.1.price = 29
card.syringe.pack.1.price = 1.20
card.gelcoat.stock = 0.8 kg
surface = 1 2 3
surface.1.name = Foredeck
surface.1.shape = trapezium
surface.1.long-side = 2.1 m
surface.1.short-side = 0.6 m
surface.1.height = 1.9 m
surface.1.buildup = buildup.1
surface.1.ground = polyester
surface.1.prepared = both
surface.1.prepared-grade = P120
surface.1.ground-age = 30 d
surface.1.cutout = 1
surface.1.cutout.1.shape = circle
surface.1.cutout.1.diameter = 460 mm
surface.2.name = Engine box
surface.2.shape = box
surface.2.length = 1100 mm
surface.2.width = 700 mm
surface.2.height = 550 mm
surface.2.faces = top front back left right
surface.2.buildup = buildup.1
surface.2.ground = polyester
surface.2.prepared = both
surface.2.prepared-grade = P120
surface.2.ground-age = 30 d
surface.3.name = Topsides
surface.3.shape = strip
surface.3.length = 7.3 m
surface.3.girth = 0.62 m
surface.3.count = 2
surface.3.buildup = buildup.2
surface.3.ground = polyester
surface.3.prepared = both
surface.3.prepared-grade = P180
surface.3.lies = wall
card.gelcoat.counted = cup.2
cup = 1 2
cup.1.card = gelcoat
cup.1.method = gravity-gun
cup.1.mixed = 100 g
cup.1.product = 100 g
cup.1.catalyst = ketone-peroxide
cup.1.catalyst-mass = 1.7 g
cup.1.dose = 1.7 g (1.48 mL)
cup.1.share = 1.7 %
cup.1.film = 410 µm
cup.1.product-temp = 21 °C
cup.1.surface-temp = 22 °C
cup.1.air-temp = 21 °C
cup.1.humidity = 58 %
cup.1.sun = shade white
cup.1.day = 2024-05-11
cup.1.weighed = 1715421600
cup.1.hour = 36000
cup.1.in = 1715421720
cup.1.usable = 6.5 min
cup.1.early = 13 min
cup.1.ended = 1715422740
cup.1.end = gelled in the cup
cup.1.gel = 17 min
cup.1.left = 100 g
cup.1.note = Cup test: the string snapped at 17
cup.2.card = gelcoat
cup.2.method = gravity-gun
cup.2.mixed = 100 g
cup.2.product = 95.2 g
cup.2.thinner = 4.76 g
cup.2.catalyst = ketone-peroxide
cup.2.catalyst-mass = 1.7 g
cup.2.dose = 1.7 g (1.48 mL)
cup.2.share = 1.7 %
cup.2.film = 502 µm
cup.2.per-area = 1120 g/m²
cup.2.product-temp = 20 °C
cup.2.surface-temp = 22 °C
cup.2.air-temp = 20 °C
cup.2.humidity = 62 %
cup.2.sun = shade white
cup.2.day = 2024-05-12
cup.2.weighed = 1715505600
cup.2.hour = 33600
cup.2.in = 1715505720
cup.2.usable = 6.5 min
cup.2.early = 13 min
cup.2.ended = 1715506080
cup.2.end = spread
cup.2.left = 40 g
cup.2.covered = 0.05 m²
cup.2.fault = tacky
cup.2.note = On an offcut, left open
test = 1
test.1.card = gelcoat
test.1.mass = 100 g
test.1.temp = 21 °C
test.1.share = 1.7 %
test.1.minutes = 17 min
done = 1
done.1.step = buildup.1.step.1
done.1.surface = surface.2
done.1.card = epoxy-filler
done.1.method = knife
done.1.day = 2024-05-10
done.1.at = 1715355000
done.1.planned = 3.7218 kg
done.1.film = 2.475 kg
done.1.used = 4.3 kg
done.1.temp = 21 °C
done.1.note = The forward corner was lower than it looked
`

// demoDocument is the made-up job as a document.
func demoDocument() job.Document {
	var d job.Document
	for _, line := range strings.Split(strings.TrimSpace(demoLines), "\n") {
		path, text, _ := strings.Cut(line, " = ")
		d = d.Set(path, text)
	}
	return d
}

// demo shows the made-up job; the builder's own waits untouched. While a cup of
// it is open it stays in sight: its clock must be able to warn.
func demo(s *State, m Message) []Effect {
	if hasOpenCup(s.Own.Doc) {
		cupFirst(s, 1)
		return nil
	}
	s.InDemo, s.Open, s.Sheets, s.Why = true, nil, nil, ""
	if s.Demo.Revision > 0 {
		if s.Doc().Get(job.BenchPath+".read-on") != s.Now.Date && s.Demo.Elsewhere == "" {
			return append(putDoc(s, demoReadings(s.Doc(), s.Now)), keepView(s))
		}
		planAnew(s)
		return []Effect{keepView(s)}
	}
	return append(putDoc(s, demoReadings(demoDocument(), s.Now)), keepView(s))
}

// demoBench is what was read of the made-up shed: a mild day, on which its
// Cup screen is full.
var demoBench = []job.Line{
	{Path: job.BenchPath + ".step", Text: "buildup.2.step.1"}, {Path: job.BenchPath + ".surface-temp", Text: "22 °C"},
	{Path: job.BenchPath + ".tool", Text: job.ByScale}, {Path: job.BenchPath + ".scale-step", Text: "0.1 g"},
	{Path: job.DayPath + ".low", Text: "18 °C"}, {Path: job.DayPath + ".high", Text: "26 °C"},
	{Path: job.DayPath + ".read-temp", Text: "22 °C"}, {Path: job.DayPath + ".read-humidity", Text: "58 %"},
}

// demoReadings puts the made-up readings at a moment: they are always of today.
func demoReadings(d job.Document, now Moment) job.Document {
	for _, l := range demoBench {
		d = d.Set(l.Path, l.Text)
	}
	for _, at := range []string{job.BenchPath + ".read-at", job.DayPath + ".read-at"} {
		d = d.Set(at, words.Clock(now.Day))
	}
	return d.Set(job.BenchPath+".read-on", now.Date).Set(job.DayPath+".date", now.Date)
}

// own shows the builder's own job again.
func own(s *State, m Message) []Effect {
	s.InDemo, s.Open, s.Sheets, s.Why = false, nil, nil, ""
	planAnew(s)
	return []Effect{keepView(s)}
}

// clearDemo takes the made-up job away, from the store too.
func clearDemo(s *State, m Message) []Effect {
	s.Demo = Slot{}
	effects := own(s, m)
	places := copies(true)
	for _, key := range append([]string{historyKey(true)}, places[:]...) {
		effects = append(effects, Effect{Kind: Forget, Key: key})
	}
	return effects
}
