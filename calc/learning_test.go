package calc_test

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// Work that went as planned, logged and adopted, never makes the order less
// certain: over drawn jobs, what is learned lies nearer to the plan and is narrower
// than what was believed before, and so is what the next surface may take. Half of
// a coat's surfaces are logged, with just what was planned for them.
func TestALogAsPlannedNeverWidensTheOrder(t *testing.T) {
	held := 0
	random := rand.New(rand.NewPCG(61, 62))
	for n := range 16 {
		d, surfaces := coated(random)
		p := plan.Make(d)
		require.Empty(t, p.Refused(), "%d", n)
		logged, works := d, 0
		for _, s := range p.Buildups()[0].Steps {
			for _, surface := range surfaces[:1+random.IntN(len(surfaces)-1)] {
				planned, film, each, known := p.PlannedOn(s.Path, []string{surface})
				require.True(t, known, "%d: %s", n, s.Path)
				works++
				logged = logged.Set("done", logged.Get("done")+" "+strconv.Itoa(works))
				for key, text := range map[string]string{
					"step": s.Path, "surface": surface, "card": s.Card.Key, "method": s.Job.Method.Key,
					"planned": inKilograms(planned), "film": inKilograms(film), "used": inKilograms(planned),
					"each": fmt.Sprintf("%.9f µm", unit.InMicrometre.From(float64(each))),
				} {
					logged = logged.Set("done."+strconv.Itoa(works)+"."+key, text)
				}
			}
		}
		p = plan.Make(logged)
		lessons := chance.Learn(&p)
		for i := range lessons.List {
			l := &lessons.List[i]
			if l.Count == 0 {
				continue
			}
			sd := float64(l.Method.LossSD().Value)
			require.InDelta(t, 0, l.Belief.Mean, 1e-6, "job %d: as planned", n)
			require.Less(t, l.Belief.SD, sd, "job %d: %s", n, l.Method.Key)
			path := job.LearntPath(l.Method.Key, l.Card.Key)
			taken := plan.Make(logged.Set(path, l.Text()))
			require.Equal(t, len(p.Needs()), len(taken.Needs()))
			for j, need := range taken.Needs() {
				for k, m := range need.Mass {
					require.InEpsilon(t, 1+float64(p.Needs()[j].Mass[k].Value), 1+float64(m.Value), 1e-5, "job %d: %s: as planned, nothing else is needed", n, need.Card.Key)
				}
			}
			before, after := likelyOf(t, &p, l.Card), likelyOf(t, &taken, l.Card)
			if before > 1 && after > 1 {
				require.LessOrEqual(t, after, before*1.03, "job %d: %s: wider by what went as planned", n, l.Card.Key)
				held++
			}
		}
	}
	assert.Greater(t, held, 12, "the jobs drawn are worth it")
}

// coated draws two to five surfaces with one or two coats on them.
func coated(r *rand.Rand) (d job.Document, surfaces []string) {
	set := func(path, text string) { d = d.Set(path, text) }
	between := func(low, high float64, symbol string) string {
		return fmt.Sprintf("%.3g %s", low+(high-low)*r.Float64(), symbol)
	}
	ids := "1 2 3 4 5"[:2*(2+r.IntN(4))-1]
	set("surface", ids)
	for _, id := range strings.Fields(ids) {
		at := "surface." + id
		set(at+".shape", "rectangle")
		set(at+".length", between(0.5, 6, "m"))
		set(at+".width", between(0.4, 3, "m"))
		set(at+".buildup", "buildup.1")
		surfaces = append(surfaces, at)
	}
	set("buildup", "1")
	set("buildup.1.step", "1 2"[:1+2*r.IntN(2)])
	for i, coats := range []string{"flowcoat nap-roller 350", "gelcoat gravity-gun 500", "gelcoat brush 450", "topcoat hv-spray 90", "primer foam-roller 150"} {
		if step := "buildup.1.step." + strconv.Itoa(i%2+1); i < 2 || r.IntN(3) == 0 {
			words := strings.Fields(coats)
			set(step+".kind", "coat")
			set(step+".card", words[0])
			set(step+".method", words[1])
			set(step+".film", words[2]+" µm")
		}
	}
	return d, surfaces
}

func inKilograms(m unit.Mass) string { return fmt.Sprintf("%.9f kg", float64(m)) }

// likelyOf is how many times the low end of what a card's line may take its high
// end is; 0: nothing is to be bought of it.
func likelyOf(t *testing.T, p *plan.Plan, card *job.Card) float64 {
	t.Helper()
	s, err := chance.Simulate(p, chance.OrderOf(p))
	require.NoError(t, err)
	for !s.Step(1 << 20) {
	}
	for _, l := range s.Order().Lines {
		if l.Card.Key == card.Key && l.Confidence != nil && l.Confidence.Low > 0 {
			return l.Confidence.High / l.Confidence.Low
		}
	}
	return 0
}
