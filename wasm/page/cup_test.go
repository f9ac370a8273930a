package page_test

import (
	"flag"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

// walks is how many builders of 500 messages TestOneDose follows.
var walks = flag.Uint64("walks", 30, "walks of 500 messages")

// moment is a time by a shed whose midnight is that of UTC.
func moment(unix int64) page.Moment {
	return page.Moment{Unix: unix, Day: int(unix % 86400), Date: "day " + strconv.FormatInt(unix/86400, 10)}
}

// tenOClock is ten in the morning of some day.
const tenOClock = int64(20_000)*86400 + 10*3600

// sent sends one message at a time.
func sent(s *page.State, at int64, verb, path, text string) (*page.State, []page.Effect) {
	return page.Update(s, page.Message{Verb: verb, Path: path, Text: text, At: moment(at)})
}

// warmBench is what is typed for a dose on a mild morning, in the order of the form.
var warmBench = []job.Line{
	{Path: "bench.now.card", Text: "gelcoat"}, {Path: "bench.now.for", Text: "amount"}, {Path: "bench.now.amount", Text: "100 g"},
	{Path: "bench.now.product-temp", Text: "22"}, {Path: "bench.now.surface-temp", Text: "24"},
	{Path: "day.today.read-temp", Text: "23"}, {Path: "day.today.read-humidity", Text: "55"}, {Path: "day.today.low", Text: "17"}, {Path: "day.today.high", Text: "27"},
	{Path: "bench.now.tool", Text: "scale"}, {Path: "bench.now.scale-step", Text: "0.1 g"}, {Path: "bench.now.syringe-step", Text: "0.1"}, {Path: "bench.now.drops", Text: "32"},
	{Path: "bench.now.pigment", Text: ""}, {Path: "bench.now.thinner", Text: ""}, {Path: "bench.now.tin", Text: ""}, {Path: "bench.now.film", Text: ""},
	{Path: "card.topcoat.ratio-mass", Text: "4"},
}

// warm types all of a mild morning's bench.
func warm(t testing.TB, s *page.State, at int64) *page.State {
	t.Helper()
	for _, l := range warmBench {
		s, _ = sent(s, at, "set", l.Path, l.Text)
	}
	return s
}

// inUse is a page with a cup that has its catalyst.
func inUse(t testing.TB, at int64) *page.State {
	t.Helper()
	s, _ := page.Start(nil, moment(at))
	s = warm(t, s, at)
	require.True(t, s.Bench().HasDose, "%v %v", s.Bench().Reasons, s.Bench().Waiting)
	s, _ = sent(s, at, "weighed", "", "")
	s, _ = sent(s, at, "in", "cup.1", "")
	require.Equal(t, page.Running, page.CupPhase(s.Doc(), "cup.1"))
	return s
}

// shownText is the whole page on a screen, as markup.
func shownText(s *page.State, screen string) string {
	s.Screen = screen
	return view.Page(s).String()
}

// showsDose reports whether markup has a dose in it, of catalyst or of parts.
func showsDose(text string) bool {
	return strings.Contains(text, `id="why-dose.`) || strings.Contains(text, `id="why-part.`) || strings.Contains(text, "by your own count")
}

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

// secondsLeft is what a running cup has to the end of its usable time.
func secondsLeft(t *testing.T, d job.Document, cup string, now page.Moment) float64 {
	in, err := strconv.ParseInt(d.Get(cup+".in"), 10, 64)
	require.NoError(t, err)
	usable, err := unit.Read(d.Get(cup+".usable"), unit.InMinute)
	require.NoError(t, err)
	return float64(in) + usable - float64(now.Unix)
}

// checkAlarms holds the alarms against one for each cup and stage.
func (b *walker) checkAlarms(m page.Message, effects []page.Effect) {
	due, rung := 0, 0
	if m.Verb == "tick" {
		for _, path := range page.OpenCups(b.s.Doc(), page.Running) {
			if page.IsTestCup(b.s.Doc(), path) {
				continue // nothing is spread of it
			}
			left := secondsLeft(b.t, b.s.Doc(), path, b.s.Now)
			stage := 0
			if left <= 60 {
				stage = 1
			}
			if left <= 0 {
				stage = 2
			}
			if stage > b.alarms[b.id(path)] {
				b.alarms[b.id(path)] = stage
				due++
			}
		}
	}
	for _, e := range effects {
		if e.Kind == page.Sound {
			rung++
		}
	}
	require.Equal(b.t, due, rung, "alarms at %+v", m)
	b.seen.stages += rung
}

// checkCups holds every cup that has its catalyst against going back, and
// whatever dose may be shown against what it rests on.
func (b *walker) checkCups(m page.Message) {
	d, out := b.s.Doc(), b.s.Bench()
	for id, in := range b.in {
		if id.inDemo == b.s.InDemo && d.Get(id.path+".weighed") == id.weighed {
			require.NotEqual(b.t, page.Weighed, page.CupPhase(d, id.path), "%s is before its catalyst again after %+v", id.path, m)
			if page.CupPhase(d, id.path) == page.Running {
				require.Equal(b.t, in, d.Get(id.path+".in"), "the start of %s moved with %+v", id.path, m)
			}
		}
	}
	cup, may := b.s.DoseFor()
	if !may {
		return
	}
	if cup != "" {
		require.Empty(b.t, b.in[b.id(cup)], "a second dose for %s after %+v", cup, m)
	}
	if cup != "" && d.Get(cup+".kind") == job.TestCup && !out.HasDose {
		require.NotNil(b.t, b.s.TestWay(), "a timed test over the table's end after %+v", m)
	} else {
		require.True(b.t, out.HasDose || out.HasParts, "%+v", m)
		require.Empty(b.t, out.Reasons, "%+v", m)
		require.Empty(b.t, out.Waiting, "%+v", m)
	}
	for _, r := range b.s.Plan.Refused() {
		for _, under := range []string{"bench.", "day.", "test.", out.Card.Path + "."} {
			require.False(b.t, strings.HasPrefix(r.Path, under), "a dose beside the refused %s", r.Path)
		}
	}
	require.Equal(b.t, b.s.Now.Date, d.Get("bench.now.read-on"), "a dose by another day's readings")
	if d.Get("day.today.date") != b.s.Now.Date {
		require.False(b.t, out.Air.HasCurve, "a dose by another day's air")
	}
}

// steps is what may lie over the cup's screen: nothing, and each of its steps.
var steps = [][]string{nil, {page.WeighSheet}, {page.WeighTestSheet}, {page.WeighSheet, page.CatalystSheet}, {page.NextCup}, {page.NextCup, page.WeighSheet}, {page.WontSheet}, {"sums"}, {"shedcard"}, {"setup"}}

// checkPage looks for a dose in all that the cup's screen shows, at every step.
func (b *walker) checkPage(m page.Message) {
	cup, may := b.s.DoseFor()
	running := page.OpenCups(b.s.Doc(), page.Running)
	for _, sheets := range steps {
		s := *b.s
		s.Screen, s.Sheets = "cup", sheets
		top := s.Sheet()
		text := shownText(&s, "cup")
		// Beside a running cup, or one whose catalyst may be in, the next cup's dose is shown only where it was asked for.
		onPlan := may && b.s.PourFor("") != nil && (len(running) == 0 && !s.NextWaits() || slices.Contains(sheets, page.NextCup))
		onScreen := onPlan && (len(running) == 0 || top == page.NextCup) // a running cup's clock stands in its place
		onCatalyst := may && cup != "" && top == page.CatalystSheet
		require.Equal(b.t, onScreen || onCatalyst, showsDose(text), "%v after %+v", sheets, m)
		require.LessOrEqual(b.t, strings.Count(text, `id="why-dose.grams"`), 1, "a dose is seen once: %v after %+v", sheets, m)
		require.Equal(b.t, onCatalyst, strings.Contains(text, `id="catalyst-in"`), "%v after %+v", sheets, m)
		if onScreen || onCatalyst {
			b.seen.doses++
			continue
		}
		b.seen.refusals++
		for _, path := range running {
			if _, ml, found := strings.Cut(b.doses[b.id(path)], "("); found {
				require.NotContains(b.t, text, ">"+strings.TrimSuffix(ml, ")")+"<", "the dose of %s is on the page after %+v", path, m)
			}
		}
	}
}

// By no sequence of messages does a cup get a second dose: once catalyst is in,
// the page never shows one for it again, over undo, imports, jumps of the clock
// and reloads. What dose there is rests on nothing refused, missing or of
// another day, and each stage of a cup alarms once.
// (All of 200,000 messages: -walks 400.)
func TestOneDose(t *testing.T) {
	var seen walked
	for seed := range *walks {
		b := newBench(t, seed)
		for range 500 {
			b.step()
		}
		seen.add(b.seen)
	}
	t.Logf("%+v", seen)
	assert.Greater(t, seen.doses, int(*walks)*5, "the walks are worth it")
	assert.Greater(t, seen.running, int(*walks)*3)
	assert.Greater(t, seen.stages, int(*walks)*2)
}

// walked counts what walks came past.
type walked struct{ doses, refusals, running, stages, reloads int }

func (w *walked) add(o walked) {
	w.doses, w.refusals, w.running = w.doses+o.doses, w.refusals+o.refusals, w.running+o.running
	w.stages, w.reloads = w.stages+o.stages, w.reloads+o.reloads
}
