package job

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// How a cup ended, as the log has it.
const (
	EndSpread   = "spread"
	EndGelled   = "gelled in the cup"
	EndScrapped = "scrapped"
	EndNoCure   = "didn't go off"
	EndInFile   = "left open in a file"
)

// What a cup is mixed for.
const (
	WorkingCup = "work"
	TestCup    = "test" // for timing its gel: none of it is put on
)

// Faults is what can be seen to have gone wrong, by key and name.
var Faults = []Option{
	{"tacky", "still tacky"}, {"soft", "dry but soft"}, {"wrinkled", "wrinkled"}, {"pinholes", "pinholes"}, {"sag", "runs and sags"},
	{"fish-eyes", "fish-eyes"}, {"print-through", "the ground prints through"}, {"chalky", "chalky before polishing"},
}

// cups is the cups that were weighed: running, or in the log. What the page
// recorded is read as it was then; the builder types what was left over, the
// minutes to the gel, how far it went, a fault and a note.
var cups = &List{Key: "cup", Max: 400, Fields: []*Field{
	{Key: "card", Name: "material", Kind: Words},
	{Key: "tin", Name: "name of the tin", Kind: Words, Optional: true},
	{Key: "step", Name: "coat", Kind: Words, Optional: true},
	{Key: "method", Name: "method", Kind: Words, Optional: true},
	{Key: "mixed", Name: "all that was mixed", Kind: Quantity, Measure: unit.CupWeights, Min: 0.001, Max: 21},
	{Key: "product", Name: "product in it", Kind: Quantity, Measure: unit.CupWeights, Max: 21, Optional: true},
	{Key: "thinner", Name: "thinner in it", Kind: Quantity, Measure: unit.CupWeights, Max: 21, Optional: true},
	{Key: "wax", Name: "wax solution in it", Kind: Quantity, Measure: unit.CupWeights, Max: 21, Optional: true},
	{Key: "parts", Name: "parts of a putty mixed by hand, in grams by their card", Kind: Words, Optional: true},
	{Key: "catalyst", Name: "catalyst", Kind: Words, Optional: true},
	{Key: "catalyst-mass", Name: "catalyst that went in, by mass", Kind: Quantity, Measure: unit.CupWeights, Max: 1, Optional: true},
	{Key: "dose", Name: "catalyst", Kind: Words, Optional: true},
	{Key: "share", Name: "catalyst, by mass", Kind: Quantity, Measure: unit.Percents, Max: 0.05, Optional: true},
	{Key: "film", Name: "wet film of one coat, as planned", Kind: Quantity, Measure: unit.Films, Max: 20e-3, Optional: true},
	{Key: "product-temp", Name: "temperature of the product", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "surface-temp", Name: "temperature of the surface", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "air-temp", Name: "temperature of the air", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "humidity", Name: "humidity of the air", Kind: Quantity, Measure: unit.Percents, Max: 1, Optional: true},
	{Key: "per-area", Name: "mix for an area, as planned", Kind: Quantity, Measure: unit.AreaWeights, Max: 1000, Optional: true},
	{Key: "sun", Name: "the part stood", Kind: Words, Optional: true},
	{Key: "day", Name: "day", Kind: Words, Optional: true},
	{Key: "weighed", Name: "weighed at", Kind: Moment, Max: 1e11, Optional: true},
	{Key: "hour", Name: "the phone's time of day then, in seconds", Kind: Words, Optional: true},
	{Key: "in", Name: "catalyst in at", Kind: Moment, Max: 1e11, Optional: true},
	{Key: "usable", Name: "usable minutes", Kind: Quantity, Measure: unit.Minutes, Max: 24 * 3600, Optional: true},
	{Key: "early", Name: "early gel", Kind: Quantity, Measure: unit.Minutes, Max: 1e6, Optional: true},
	{Key: "late", Name: "late gel", Kind: Quantity, Measure: unit.Minutes, Max: 1e6, Optional: true},
	{Key: "kind", Name: "kind of cup", Kind: Choice, Options: []Option{{WorkingCup, "to be put on"}, {TestCup, "to time its gel"}}, Optional: true},
	{Key: "amount-was", Name: "how much was typed before it was weighed", Kind: Words, Optional: true},
	{Key: "ended", Name: "ended at", Kind: Moment, Max: 1e11, Optional: true},
	{Key: "end", Name: "how it ended", Kind: Words, Optional: true},
	{Key: "gel", Name: "minutes until it gelled, timed", Kind: Quantity, Measure: unit.Minutes, Max: 24 * 3600, Optional: true},
	{Key: "left", Name: "left over in cup and tool, weighed", Kind: Quantity, Measure: unit.CupWeights, Max: 21, Optional: true},
	{Key: "covered", Name: "area that it covered, measured", Kind: Quantity, Measure: unit.Areas, Min: 1e-4, Max: 1000, Optional: true},
	{Key: "fault", Name: "what went wrong", Kind: Choice, Options: Faults, Optional: true},
	{Key: "note", Name: "note", Kind: Words, Optional: true},
}}

// MaxFinished is how many finished pieces of work a log holds.
const MaxFinished = 2000

// finished is the pieces of work that are done: a step on one surface or on
// several. What was planned for them is kept as it was then.
var finished = &List{Key: "done", Max: MaxFinished, Fields: []*Field{
	{Key: "step", Name: "step", Kind: Words},
	{Key: "surface", Name: "surfaces", Kind: Pasted, Max: 16000},
	{Key: "card", Name: "material", Kind: Words, Optional: true},
	{Key: "method", Name: "method", Kind: Words, Optional: true},
	{Key: "day", Name: "day", Kind: Words, Optional: true},
	{Key: "at", Name: "done at", Kind: Moment, Max: 1e11, Optional: true},
	{Key: "hour", Name: "the phone's time of day then, in seconds", Kind: Words, Optional: true},
	{Key: "cups", Name: "cups that went on", Kind: Pasted, Max: 4000, Optional: true},
	{Key: "planned", Name: "planned to be put on", Kind: Quantity, Measure: unit.Weights, Max: 1e5, Optional: true},
	{Key: "film", Name: "the film's part of that", Kind: Quantity, Measure: unit.Weights, Max: 1e5, Optional: true},
	{Key: "each", Name: "wet film of one coat, as planned", Kind: Quantity, Measure: unit.Films, Max: 20e-3, Optional: true},
	{Key: "used", Name: "put on, what was left over not counted", Kind: Quantity, Measure: unit.Weights, Min: 1e-6, Max: 1e5, Optional: true},
	{Key: "temp", Name: "temperature of the surface", Kind: Quantity, Measure: unit.Temperatures, Min: coldest, Max: warmest, Optional: true},
	{Key: "note", Name: "note", Kind: Words, Optional: true},
}}

// Cup is a cup in the log, or one that runs. Figures without a Step weren't
// recorded.
type Cup struct {
	Path, Card, Tin, Step, Method          string
	Catalyst, Dose, Day, End, Fault, Note  string
	Hour                                   string // seconds from the midnight of its day, by the phone; "": of an older job
	Mixed, Product, Thinner, Wax, DoseMass working.Figure[unit.Mass]
	Parts                                  map[string]unit.Mass // of a putty mixed by hand, by card; nil: none was
	Left                                   working.Figure[unit.Mass]
	Share                                  working.Figure[unit.ByMass]
	Film                                   working.Figure[unit.WetFilm]
	PerArea                                working.Figure[unit.MassPerArea]
	Covered                                working.Figure[unit.Area]
	ProductTemp, SurfaceTemp, AirTemp      working.Figure[unit.Temperature]
	Humidity                               working.Figure[unit.Share]
	Usable, Early, Late, Gel               working.Figure[unit.Time]
	Weighed, In, Ended                     float64 // seconds since 1970; 0: not yet, or not known
	IsInSun, IsDark, IsTest                bool
}

// Finished is a step that is done on some surfaces. Figures without a Step weren't
// recorded.
type Finished struct {
	Path, Step, Card, Method, Day string
	Hour                          string   // seconds from the midnight of its day, by the phone; "": of an older job
	Surfaces                      []string // paths
	Cups                          []string // paths
	At                            float64  // seconds since 1970; 0: not known
	Planned, Film, Used           working.Figure[unit.Mass]
	Each                          working.Figure[unit.WetFilm]
	Temperature                   working.Figure[unit.Temperature]
}

// cups reads the cups of the log. What the page recorded itself is ignored where it
// can't be read, as any unknown line is; what the builder types is reported. So it
// is with finished work.
func (r *reader) cups(string) []Cup {
	taken := &reader{doc: r.doc, units: r.units}
	var list []Cup
	for _, id := range r.doc.Items("cup") {
		list = append(list, r.cup(taken, "cup."+id))
	}
	return list
}

func (r *reader) finished(string) []Finished {
	taken := &reader{doc: r.doc, units: r.units}
	var list []Finished
	for _, id := range r.doc.Items("done") {
		list = append(list, r.work(taken, "done."+id))
	}
	return list
}

func (r *reader) cup(taken *reader, path string) Cup {
	at := under(path, cups)
	words := func(key string) string { return taken.words(at(key)) }
	mass := func(key string) working.Figure[unit.Mass] { return typed[unit.Mass](taken, at, key) }
	moment := func(key string) float64 { si, _ := taken.number(at(key)); return si }
	r.words(at("note"))
	return Cup{
		Path: path, Card: words("card"), Tin: strings.TrimSpace(words("tin")), Step: words("step"), Method: words("method"),
		Catalyst: words("catalyst"), Dose: words("dose"), Day: words("day"), Hour: words("hour"), End: words("end"), Fault: r.choice(at("fault")), Note: words("note"),
		Mixed: mass("mixed"), Product: mass("product"), Thinner: mass("thinner"), Wax: mass("wax"), DoseMass: mass("catalyst-mass"),
		Parts:       readParts(words("parts")),
		Left:        typed[unit.Mass](r, at, "left"),
		Share:       typed[unit.ByMass](taken, at, "share"),
		Film:        typed[unit.WetFilm](taken, at, "film"),
		PerArea:     typed[unit.MassPerArea](taken, at, "per-area"),
		Covered:     typed[unit.Area](r, at, "covered"),
		ProductTemp: typed[unit.Temperature](taken, at, "product-temp"), SurfaceTemp: typed[unit.Temperature](taken, at, "surface-temp"),
		AirTemp: typed[unit.Temperature](taken, at, "air-temp"), Humidity: typed[unit.Share](taken, at, "humidity"),
		Usable: typed[unit.Time](taken, at, "usable"), Early: typed[unit.Time](taken, at, "early"), Late: typed[unit.Time](taken, at, "late"), Gel: typed[unit.Time](r, at, "gel"),
		Weighed: moment("weighed"), In: moment("in"), Ended: moment("ended"),
		IsInSun: strings.HasPrefix(words("sun"), "sun"), IsDark: strings.HasSuffix(words("sun"), "dark"),
		IsTest: words("kind") == TestCup,
	}
}

func (r *reader) work(taken *reader, path string) Finished {
	at := under(path, finished)
	r.words(at("note"))
	moment, _ := taken.number(at("at"))
	list := func(key string) []string { return strings.Fields(taken.words(at(key))) }
	return Finished{
		Path: path, Step: taken.words(at("step")), Card: taken.words(at("card")), Method: taken.words(at("method")), Day: taken.words(at("day")), Hour: taken.words(at("hour")),
		Surfaces: list("surface"), Cups: list("cups"), At: moment,
		Planned: typed[unit.Mass](taken, at, "planned"), Film: typed[unit.Mass](taken, at, "film"), Used: typed[unit.Mass](r, at, "used"),
		Each: typed[unit.WetFilm](taken, at, "each"), Temperature: typed[unit.Temperature](r, at, "temp"),
	}
}

// typedInLog is what the builder types in the log, and may still be wrong.
var typedInLog = []string{"left", "gel", "covered", "used", "temp", "fault", "note"}

// LogProblems lists what can't be read of what the page recorded itself: figures
// below zero, moments before 1970.
func LogProblems(d Document) []Problem {
	r := &reader{doc: d, units: ReadUnits(d)}
	for _, list := range []*List{cups, finished} {
		for _, id := range d.Items(list.Key) {
			for _, f := range list.Fields {
				if !slices.Contains(typedInLog, f.Key) {
					r.number(list.Key+"."+id+"."+f.Key, f)
				}
			}
		}
	}
	return r.problems
}

// Latest is the latest moment in the log, in seconds since 1970.
func Latest(d Document) float64 {
	latest := 0.
	for _, list := range []*List{cups, finished} {
		for _, id := range d.Items(list.Key) {
			for _, f := range list.Fields {
				if si, err := strconv.ParseFloat(d.Get(list.Key+"."+id+"."+f.Key), 64); f.Kind == Moment && err == nil && si <= f.Max { // NaN is no moment either
					latest = max(latest, si)
				}
			}
		}
	}
	return latest
}

// CupByPath finds a cup; nil: there is none.
func (j *Job) CupByPath(path string) *Cup {
	for i := range j.Cups {
		if j.Cups[i].Path == path {
			return &j.Cups[i]
		}
	}
	return nil
}

// PartsText writes how much of each card went into a cup of putty mixed by hand.
func PartsText(parts map[string]unit.Mass) string {
	var list []string
	for key, mass := range parts {
		list = append(list, key+"="+strconv.FormatFloat(unit.InGram.From(float64(mass)), 'f', 1, 64))
	}
	slices.Sort(list)
	return strings.Join(list, " ")
}

// readParts reads it back, without what can't be read.
func readParts(text string) map[string]unit.Mass {
	var parts map[string]unit.Mass
	for _, part := range strings.Fields(text) {
		key, grams, _ := strings.Cut(part, "=")
		if g, err := strconv.ParseFloat(grams, 64); err == nil && g > 0 && g < 21_000 {
			if parts == nil {
				parts = map[string]unit.Mass{}
			}
			parts[key] = unit.Mass(unit.InGram.SI(g))
		}
	}
	return parts
}
