package page_test

import (
	"maps"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/wasm/page"
)

// cupID tells a cup from every other: its job, its place and when it was weighed.
type cupID struct {
	inDemo        bool
	path, weighed string
}

// walker is a builder who taps anything at any time, and what was seen of it.
type walker struct {
	t      *testing.T
	random *rand.Rand
	texts  *jobtest.Random
	s      *page.State
	now    int64
	store  map[string]string // what the browser keeps
	saved  []string          // exported jobs
	in     map[cupID]string  // when catalyst went into a cup
	doses  map[cupID]string
	alarms map[cupID]int // stage of the last alarm since the last reload
	seen   walked
}

// newBench is a builder on a mild morning, with all typed for a dose.
func newBench(t *testing.T, seed uint64) *walker {
	t.Helper()
	b := &walker{t: t, random: rand.New(rand.NewPCG(seed, 11)), texts: jobtest.New(seed), now: tenOClock, store: map[string]string{},
		in: map[cupID]string{}, doses: map[cupID]string{}, alarms: map[cupID]int{}}
	b.texts.Junk = 0.4
	b.reload()
	b.s = warm(t, b.s, b.now)
	return b
}

func (b *walker) id(path string) cupID {
	return cupID{b.s.InDemo, path, b.s.Doc().Get(path + ".weighed")}
}

// pass lets time go on: by seconds mostly, sometimes by a jump either way.
func (b *walker) pass() {
	switch n := b.random.IntN(200); {
	case n < 150:
		b.now += int64(b.random.IntN(20))
	case n < 196:
		b.now += int64(b.random.IntN(400))
	case n == 196:
		b.now -= int64(b.random.IntN(3600))
	case n == 197:
		b.now += 86400
	default:
		b.now += int64(b.random.IntN(5 * 3600))
	}
}

// draw draws what the builder does next.
func (b *walker) draw() page.Message {
	m := page.Message{At: moment(b.now)}
	cup := "cup." + strconv.Itoa(1+b.random.IntN(6))
	if open := append(page.OpenCups(b.s.Doc(), page.Weighed), page.OpenCups(b.s.Doc(), page.Running)...); len(open) > 0 && b.random.IntN(3) > 0 {
		cup = open[b.random.IntN(len(open))]
	}
	pick := func(list ...string) string { return list[b.random.IntN(len(list))] }
	switch n := b.random.IntN(100); {
	case n < 24: // a good figure
		l := warmBench[b.random.IntN(len(warmBench))]
		m.Verb, m.Path, m.Text = "set", l.Path, l.Text
		switch l.Path {
		case "bench.now.amount":
			m.Text = pick("100 g", "87 g", "3 oz", "60 mL", "2 US fl oz", "93.5")
		case "bench.now.tool":
			m.Text = pick("scale", "syringe", "drops")
		case "bench.now.card":
			m.Text = pick("gelcoat", "gelcoat", "gelcoat", "topcoat", "flowcoat")
		}
	case n < 27: // any text anywhere at the bench
		l := warmBench[b.random.IntN(len(warmBench))]
		m.Verb, m.Path, m.Text = "set", l.Path, b.texts.Text(job.FieldAt(l.Path))
	case n < 39:
		m.Verb = "weighed"
	case n < 51:
		m.Verb, m.Path = "in", cup
	case n < 60:
		m.Verb, m.Path, m.Text = "end", cup, pick("spread", "left", "gelled", "scrap", "no-cure", "other")
	case n < 70:
		m.Verb = "tick"
	case n < 80:
		m.Verb = pick("undo", "undo", "redo")
	case n < 84:
		m.Verb, m.Path = "sheet", pick(page.NextCup, page.WeighSheet, page.CatalystSheet, page.WontSheet, page.WeighTestSheet, "setup")
		if b.random.IntN(3) == 0 {
			m = page.Message{Verb: pick("back", "back", "time-test", "tool"), Text: pick("scale 0.1 g", "syringe 0.1 mL", "other"), At: m.At}
		}
	case n < 86:
		m.Verb, m.Path = "why", pick("dose.grams", "dose.millilitres", "usable")
	case n < 88:
		m.Verb = pick("demo", "own", "clear", "own")
	case n < 90 && len(b.saved) > 0:
		m.Verb, m.Text = "import", b.saved[b.random.IntN(len(b.saved))]
	case n < 93:
		m.Verb, m.Path = pick("remove", "copy", "move", "add"), pick(cup, "cup", "test", "bench", "bench.now")
	case n < 94:
		m.Verb, m.Path, m.Text = "set", cup+"."+pick("in", "ended", "weighed", "end", "mixed", "card", "left", "note"), pick("", "0", "1", "100 g")
	case n < 95:
		m.Verb, m.Path = "take", cup
	case n < 96:
		m.Verb, m.Text = "system", pick("us", "metric")
	case n < 97:
		m.Verb, m.Path, m.Text = "real", "bench.now."+pick("product-temp", "surface-temp"), b.s.Doc().Get("bench.now.product-temp")
	case n < 99 || b.random.IntN(5) > 0:
		m.Verb, m.Path, m.Text = "set", "bench.now.tin", pick("", "May")
	default:
		m = message(b.random, b.s, b.texts)
		m.At = moment(b.now)
	}
	return m
}

// step sends one message, or loads the page anew, and looks at what came of it.
func (b *walker) step() {
	b.pass()
	switch b.random.IntN(150) {
	case 0:
		b.reload()
		return
	case 1, 2, 3: // a fresh start at the bench
		b.s = warm(b.t, b.s, b.now)
	}
	b.send(b.draw())
}

// send sends one message, and looks at what came of it.
func (b *walker) send(m page.Message) {
	before := b.s
	next, effects := page.Update(b.s, m)
	b.s = next
	b.keep(effects)
	for _, e := range effects {
		whole(b.t, m, e)
	}
	if m.Verb == "weighed" {
		b.forget(before)
	}
	b.note(before)
	b.checkAlarms(m, effects)
	b.checkCups(m)
	if looked := map[string]bool{"in": true, "undo": true, "redo": true, "import": true, "own": true}; looked[m.Verb] && b.random.IntN(3) == 0 || b.random.IntN(20) == 0 {
		b.checkPage(m)
	}
	if b.random.IntN(40) == 0 && len(b.saved) < 60 {
		b.saved = append(b.saved, job.Save(b.s.Doc(), 3))
	}
}

func (b *walker) reload() {
	b.seen.reloads++
	var effects []page.Effect
	b.s, effects = page.Start(maps.Clone(b.store), moment(b.now))
	b.keep(effects)
	b.alarms = map[cupID]int{}
	b.checkCups(page.Message{Verb: "reload"})
	b.checkPage(page.Message{Verb: "reload"})
}

func (b *walker) keep(effects []page.Effect) {
	for _, e := range effects {
		switch e.Kind {
		case page.Keep:
			b.store[e.Key] = e.Kept()
		case page.Forget, page.Revoke:
			delete(b.store, e.Key)
		}
	}
}

// forget drops what is known of a cup whose place and second a new one has taken.
func (b *walker) forget(before *page.State) {
	for _, path := range page.OpenCups(b.s.Doc(), page.Weighed) {
		if before.Doc().Get(path+".weighed") == "" {
			delete(b.in, b.id(path))
			delete(b.doses, b.id(path))
		}
	}
}

// note takes down each cup that has just got its catalyst.
func (b *walker) note(before *page.State) {
	for _, path := range page.OpenCups(b.s.Doc(), page.Running) {
		id := b.id(path)
		if b.in[id] == "" {
			require.Equal(b.t, page.Weighed, page.CupPhase(before.Doc(), path), "%s runs without having been weighed", path)
			b.in[id], b.doses[id] = b.s.Doc().Get(path+".in"), b.s.Doc().Get(path+".dose")
			b.seen.running++
		}
	}
}

// walked counts what walks came past.
type walked struct{ doses, refusals, running, stages, reloads int }

func (w *walked) add(o walked) {
	w.doses, w.refusals, w.running = w.doses+o.doses, w.refusals+o.refusals, w.running+o.running
	w.stages, w.reloads = w.stages+o.stages, w.reloads+o.reloads
}
