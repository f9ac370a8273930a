package bench_test

import (
	"math/rand/v2"
	"strconv"
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
)

// benches draws what is typed at a bench: mostly with a dose in reach, and some
// fields typed at random.
type benches struct {
	*rand.Rand
	texts *jobtest.Random
}

func newBenches(seed uint64) *benches {
	b := &benches{rand.New(rand.NewPCG(seed, 3)), jobtest.New(seed)}
	b.texts.Junk = 0.25
	return b
}

func (r *benches) pick(list ...string) string { return list[r.IntN(len(list))] }

func (r *benches) between(low, high float64) string {
	return strconv.FormatFloat(low+r.Float64()*(high-low), 'f', 1, 64)
}

// likely is a bench that a builder could have typed.
func (r *benches) likely() job.Document {
	var d job.Document
	set := func(path, text string) { d = d.Set(path, text) }
	for _, line := range strings.Split(strings.TrimSpace(warmMorning), "\n") {
		path, text, _ := strings.Cut(line, " = ")
		set(path, text)
	}
	card := r.pick("gelcoat", "gelcoat", "flowcoat", "vinylester", "polyester-filler")
	set("bench.now.card", card)
	set("bench.now.amount", r.pick("100 g", r.between(40, 100)+" g", r.between(1.5, 3.5)+" oz", r.between(30, 80)+" mL", r.between(100, 700)+" g", "0.2 lb", "2 US fl oz"))
	at := 14 + 19*r.Float64()
	set("bench.now.surface-temp", strconv.FormatFloat(at, 'f', 1, 64))
	set("bench.now.product-temp", strconv.FormatFloat(at+8*r.Float64()-5, 'f', 1, 64))
	set("day.today.low", r.between(12, 22))
	set("day.today.high", r.between(24, 34))
	set("bench.now.method", r.pick("nap-roller", "brush", "gravity-gun", "foam-roller"))
	tool := r.pick("scale", "syringe", "drops")
	set("bench.now.tool", tool)
	set("bench.now.scale-step", r.pick("0.1 g", "0.1 g", "0.01 g", "1 g"))
	set("bench.now.syringe-step", r.pick("0.1 mL", "0.2 mL", "0.5"))
	set("bench.now.drops", r.between(12, 45))
	if r.IntN(3) == 0 {
		set("bench.now.thinner", r.between(0, 6))
		set("bench.now.thinner-by", r.pick(job.PerMass, job.PerVolume))
	}
	if r.IntN(3) == 0 {
		set("bench.now.pigment", r.between(0, 9))
	}
	if r.IntN(2) == 0 {
		for key, text := range map[string]string{"card": card, "mass": "100 g", "temp": r.between(18, 28), "share": r.between(1.2, 2.2), "minutes": r.between(8, 25)} {
			set("test.1."+key, text)
		}
		set("test", "1")
	}
	if r.IntN(4) == 0 {
		r.ownTable(set, "card."+card)
	}
	return d
}

// ownTable types a table of a few rows, in order now and then.
func (r *benches) ownTable(set func(path, text string), card string) {
	ids, at, share := "", 12+6*r.Float64(), 2.4-0.4*r.Float64()
	for i := range 1 + r.IntN(4) {
		id := strconv.Itoa(i + 1)
		ids += " " + id
		set(card+".dose."+id+".temp", strconv.FormatFloat(at, 'f', 1, 64))
		set(card+".dose."+id+".share", strconv.FormatFloat(share, 'f', 2, 64))
		at, share = at+8*r.Float64()-1, share-0.4*r.Float64()
	}
	set(card+".dose", strings.TrimSpace(ids))
}

// hangsOn is every field that a catalyst dose can depend on.
func hangsOn(d job.Document, b *bench.Bench) []string {
	var list []string
	bench, day := job.ListAt("bench"), job.ListAt("day")
	tool := map[string]string{"scale": "scale-step", "syringe": "syringe-step", "drops": "drops"}
	for _, f := range bench.Fields {
		for kind, key := range tool {
			if f.Key == key && kind != d.Get("bench.now.tool") {
				f = nil
				break
			}
		}
		if f != nil && f.Kind != job.Words && !strings.HasPrefix(f.Key, "flow-") && f.Key != "locker" {
			list = append(list, "bench.now."+f.Key)
		}
	}
	for _, f := range day.Fields {
		if f.Kind != job.Words {
			list = append(list, "day.today."+f.Key)
		}
	}
	for _, f := range material.Fields {
		if f.Shown(&b.Card.Card) {
			list = append(list, b.Card.Path+"."+f.Key)
		}
	}
	list = append(list, "card."+b.Card.Hardener+".density")
	if b.Card.Thinner != "" {
		list = append(list, "card."+b.Card.Thinner+".density")
	}
	for _, l := range append(d.Under("test"), d.Under(b.Card.Path+".dose")...) {
		if f := job.FieldAt(l.Path); f != nil && f.Kind == job.Quantity {
			list = append(list, l.Path)
		}
	}
	return list
}
