package job

import (
	"strings"

	"shedreckoner/calc/material"
	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// under gives the path and field of a key in an item of the list.
func under(item string, list *List) func(string) (string, *Field) {
	return func(key string) (string, *Field) { return item + "." + key, list.field(key) }
}

func (r *reader) bench(string) Bench {
	at := under(BenchPath, bench)
	b := Bench{
		Card:          r.words(at("card")),
		ForStep:       r.choice(at("for")) == ForStep,
		Step:          r.words(at("step")),
		Product:       typed[unit.Temperature](r, at, "product-temp"),
		Surface:       typed[unit.Temperature](r, at, "surface-temp"),
		Film:          typed[unit.WetFilm](r, at, "film"),
		Thinner:       typed[unit.Share](r, at, "thinner"),
		ThinnerByMass: r.choice(at("thinner-by")) == PerMass,
		Pigment:       typed[unit.ByMass](r, at, "pigment"),
		Tool:          r.choice(at("tool")),
		Catalyst:      r.words(at("catalyst")),
		Tin:           strings.TrimSpace(r.words(at("tin"))),
		Stretch:       typed[unit.Time](r, at, "stretch"),
		Mixing:        typed[unit.Time](r, at, "mixing"),
		ReadOn:        r.doc.Get(BenchPath + ".read-on"),
		ReadAt:        typed[unit.Time](r, at, "read-at"),
		Ahead:         typed[unit.Temperature](r, at, "ahead"),
		HasMethod:     r.doc.Get(BenchPath+".method") != "",
		HasAmount:     r.doc.Get(BenchPath+".for") == ForAmount,
		ProductWas:    typed[unit.Temperature](r, at, "product-was"),
		SurfaceWas:    typed[unit.Temperature](r, at, "surface-was"),
		Agency:        r.words(at("agency")),
		Locker:        typed[unit.Volume](r, at, "locker"),
		FlowWanted:    typed[unit.Time](r, at, "flow-wanted"),
		FlowCup:       r.choice(at("flow-cup")),
	}
	b.Method, _ = material.FindMethod(r.choice(at("method")))
	for i, n := range []string{"1", "2"} {
		b.Flow[i] = FlowReading{typed[unit.ByVolume](r, at, "flow-thinner-"+n), typed[unit.Time](r, at, "flow-seconds-"+n)}
	}
	r.amount(&b)
	r.toolStep(&b)
	if si, ok := r.number(BenchPath+".mark", bench.field("mark")); ok {
		b.Mark = unit.Typed(si, unit.InMillilitre)
	}
	return b
}

// typed is the figure at a key, empty where none was typed.
func typed[Q unit.Quantity](r *reader, at func(string) (string, *Field), key string) working.Figure[Q] {
	path, field := at(key)
	f, _ := figure[Q](r, path, field)
	return f
}

// amount reads how much is mixed, by mass or by volume.
func (r *reader) amount(b *Bench) {
	if b.ForStep { // it isn't shown
		return
	}
	path, f := BenchPath+".amount", bench.field("amount")
	if !IsVolume(r.doc.Get(path)) {
		b.Amount, _ = figure[unit.Mass](r, path, f)
		return
	}
	if si, ok := r.number(path, f); ok {
		b.Volume = working.Given(unit.Volume(si), "amount", unit.InMillilitre, "", source.Typed)
	}
}

// toolSteps is where each tool's step is typed, and the scale it is counted in.
var toolSteps = map[string]struct {
	key   string
	scale unit.Scale
}{
	ByScale: {"scale-step", unit.InGram}, BySyringe: {"syringe-step", unit.InMillilitre}, ByDrops: {"drops", unit.InPure},
}

func (r *reader) toolStep(b *Bench) {
	tool := toolSteps[b.Tool]
	if si, ok := r.number(BenchPath+"."+tool.key, bench.field(tool.key)); ok {
		b.ToolStep = unit.Typed(si, tool.scale)
	}
}

func (r *reader) day(string) Day {
	at := under(DayPath, day)
	return Day{
		Low:          typed[unit.Temperature](r, at, "low"),
		High:         typed[unit.Temperature](r, at, "high"),
		ReadTemp:     typed[unit.Temperature](r, at, "read-temp"),
		ReadHumidity: typed[unit.Share](r, at, "read-humidity"),
		Sunrise:      typed[unit.Time](r, at, "sunrise"),
		ReadAt:       typed[unit.Time](r, at, "read-at"),
		WorkFrom:     typed[unit.Time](r, at, "work-from"),
		WorkTo:       typed[unit.Time](r, at, "work-to"),
		InSun:        r.choice(at("sun")) == "sun",
		Colour:       r.choice(at("colour")),
		Date:         r.doc.Get(DayPath + ".date"),
	}
}

func (r *reader) tests(string) []Test {
	var list []Test
	for _, id := range r.doc.Items("test") {
		path := "test." + id
		at := under(path, tests)
		list = append(list, Test{
			Path: path, Card: r.words(at("card")), Tin: strings.TrimSpace(r.words(at("tin"))), Day: r.doc.Get(path + ".day"),
			Mass:        typed[unit.Mass](r, at, "mass"),
			Temperature: typed[unit.Temperature](r, at, "temp"),
			Catalyst:    typed[unit.ByMass](r, at, "share"),
			Gel:         typed[unit.Time](r, at, "minutes"),
		})
	}
	return list
}
