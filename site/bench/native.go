package main

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"time"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/wasm/page"
)

const (
	mostSurfaces  = 500
	exponentLimit = 1.2 // of plan time by surfaces: 1 is linear
	plans         = 25  // of each job; the fastest counts, since others use the machine too
	atLeastFor    = time.Second / 2
)

// native prints what needs no browser: how plan time grows with surfaces, and how long the simulation of an order takes.
func native() error {
	many := []int{1, 10, 100, mostSurfaces}
	took := make([]float64, len(many))
	for i, n := range many {
		doc := jobOf(n)
		took[i] = fastest(plans, func() {
			p := plan.Make(doc)
			chance.OrderOf(&p)
			p.Refused()
		})
		fmt.Printf("plan/%d %s ms -\n", n, plain(took[i]))
	}
	p := plan.Make(jobOf(0))
	draws := fastest(3, func() {
		s, err := chance.Simulate(&p, chance.OrderOf(&p))
		for err == nil && !s.Step(math.MaxInt) {
		}
	})
	fmt.Printf("draws/native %s ms -\n", plain(draws))
	return figure("plan/exponent", exponent(many, took), "-", exponentLimit)
}

// exponent fits k in time ~ surfaces^k to what the further surfaces add to the time of the first.
func exponent(many []int, took []float64) float64 {
	var n, x, y, xx, xy float64
	for i := range many[1:] {
		a, b := math.Log(float64(many[i+1]-many[0])), math.Log(max(took[i+1]-took[0], 1e-6))
		n, x, y, xx, xy = n+1, x+a, y+b, xx+a*a, xy+a*b
	}
	return (n*xy - x*y) / (n*xx - x*x)
}

// fastest runs f some times, and a short one for a while, and gives the least milliseconds: what others do meanwhile must not
// fall on all of its runs.
func fastest(times int, f func()) float64 {
	least := math.Inf(1)
	for begun := time.Now(); times > 0 || time.Since(begun) < atLeastFor; times-- {
		start := time.Now()
		f()
		least = min(least, time.Since(start).Seconds()*1000)
	}
	return least
}

// jobOf is the made-up job with as many surfaces, copies of its first; 0: as it is. The first is made narrow: hundreds of
// it as it is take more filler than is planned, and a job in which anything is refused shows older figures.
func jobOf(surfaces int) job.Document {
	s, _ := page.Start(nil, page.Moment{Date: "2026-05-01"})
	do := func(verb, path string) { s, _ = page.Update(s, page.Message{Verb: verb, Path: path, At: s.Now}) }
	do("demo", "")
	ids := s.Doc().Items("surface")
	for _, id := range ids[min(len(ids), max(surfaces, 1)):] {
		if surfaces > 0 {
			do("remove", "surface."+id)
		}
	}
	doc := s.Doc()
	if surfaces > 0 {
		doc = doc.Set("surface."+ids[0]+".height", "300 mm")
	}
	for n := len(doc.Items("surface")); n < surfaces; n++ {
		doc, _ = doc.Copy("surface." + ids[0])
	}
	return doc
}

// checkedJob is a job of the most surfaces, as the page saves it.
func checkedJob() (string, error) {
	doc := jobOf(mostSurfaces)
	if n := len(doc.Items("surface")); n != mostSurfaces {
		return "", errors.New("the large job has " + strconv.Itoa(n) + " surfaces")
	}
	return job.Save(doc, 1_000_000), nil
}
