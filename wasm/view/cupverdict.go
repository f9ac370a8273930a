package view

import (
	"slices"
	"strconv"
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/cure"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// verdicts is what bears on the answer: what stops first, then what asks, what
// wasn't checked, what holds.
func verdicts(s *page.State) html {
	b := s.Bench()
	list := slices.Clone(b.Verdicts())
	rank := []int{bench.Stops: 0, bench.Asks: 1, bench.NotChecked: 2, bench.Holds: 3}
	slices.SortStableFunc(list, func(x, y bench.Verdict) int { return rank[x.Kind] - rank[y.Kind] })
	var strips []html
	unread := 0
	for i, v := range list {
		if v.Subject == bench.Heat && v.Kind == bench.Stops && len(b.Reasons) > 0 {
			continue // the answer says it
		}
		if v.Kind != bench.Stops && v.Kind != bench.Asks && (v.Subject == bench.Fire || v.Subject == bench.Heat || v.Subject == bench.Film) {
			continue
		}
		if v.Kind == bench.NotChecked && (v.Subject == bench.Dew || v.Subject == bench.Humidity) {
			if unread++; unread > 1 {
				continue // both are read at once
			}
			strips = append(strips, verdict(unchecked, words.FitUnchecked, words.ReadTheAir, bench.AirSheet+".fit"))
			continue
		}
		why := ""
		if v.Err != nil {
			why = words.Dose(v.Err, s.Plan.Job.Units)
		}
		first, rest := words.Verdict(v, why, s.Plan.Job.Units)
		strips = append(strips, verdict(kindWords[v.Kind], first, rest, opensAt(v.Opens, i)))
	}
	if b.Card != nil && b.Tin == cure.Untimed && len(b.Reasons) == 0 {
		strips = append(strips, verdict(asks, words.EstimateFirst, words.Estimate, bench.TinSheet+".estimate"))
	}
	return join(strips...)
}

var kindWords = map[bench.Kind]string{bench.Holds: holds, bench.Asks: asks, bench.Stops: stops, bench.NotChecked: unchecked}

// opensAt is the sheet that a strip opens, told apart from the others that open it too.
func opensAt(sheet string, i int) string {
	switch {
	case sheet == "" || strings.HasPrefix(sheet, "buildup."):
		return sheet // a step has a sheet of its own
	case strings.HasPrefix(sheet, job.BenchPath+"."):
		sheet = "setup" // there it is typed
	}
	return sheet + ".v" + strconv.Itoa(i)
}

// setups is what is assumed or remembered, each with the way to change it.
func setups(s *page.State) html {
	b := s.Bench()
	if b.Card == nil {
		return nothing
	}
	parts := []html{}
	if limit := b.Size.Limits; len(limit) > 0 && limit[0].Lifts != "" {
		parts = append(parts, setup("limit", words.HeldBy(of(s, limit[0].Mass, unit.CupWeights), words.Bound(limit[0].Bound)), limit[0].Lifts+".limit"))
	}
	return join(append(parts, setup("cup", words.Listed(toolText(s), tinText(s), thinnerText(s)), "setup"))...)
}

func toolText(s *page.State) string {
	get := func(key string) string { return s.Doc().Get(job.BenchPath + "." + key) }
	switch get("tool") {
	case job.BySyringe:
		if step := get("syringe-step"); step != "" {
			return words.BySyringe(page.WithUnit(s, job.BenchPath+".syringe-step"))
		}
	case job.ByDrops:
		if n := get("drops"); n != "" {
			return words.ByDrops(n)
		}
	default:
		if step := get("scale-step"); step != "" {
			return words.ByScale(page.WithUnit(s, job.BenchPath+".scale-step"))
		}
	}
	return ""
}

func tinText(s *page.State) string {
	return words.TinTimed(s.Doc().Get(job.BenchPath+".tin"), s.Bench().Tin != cure.Untimed)
}

func thinnerText(s *page.State) string {
	for _, l := range s.Bench().Weigh {
		if l.Part == bench.Thinner {
			return words.WithThinner(l.Own.String())
		}
	}
	return words.WithThinner("")
}
