package view

import (
	"slices"
	"sort"
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
// wasn't checked; what holds is one strip, with a sheet of its own.
func verdicts(s *page.State) html {
	b := s.Bench()
	told, held := toldVerdicts(b)
	lines := strips(s, told, "v")
	if len(held) == 1 {
		lines = append(lines, strips(s, held, "h")...)
	} else if len(held) > 1 {
		first, rest := words.Held(held, len(told)+len(b.Reasons) == 0, s.Plan.Job.Units)
		lines = append(lines, verdict(holds, first, rest, page.FitSheet))
	}
	if b.Card != nil && b.Tin == cure.Untimed && len(b.Reasons) == 0 {
		lines = append(lines, verdict(asks, words.EstimateFirst, words.Estimate, bench.TinSheet+".estimate"))
	}
	return join(lines...)
}

// fitSheet is each verdict that holds, with the way to what it rests on.
func fitSheet(s *page.State) shown {
	_, held := toldVerdicts(s.Bench())
	return shown{Title: words.FitToCoat, Body: region("held", "section", a("class", "verdicts"), strips(s, held, "h")...)}
}

// toldVerdicts are those that have something to say, the gravest first, and apart
// from them what holds and needs no caution.
func toldVerdicts(b *bench.Bench) (told, held []bench.Verdict) {
	list := slices.Clone(b.Verdicts())
	rank := []int{bench.Stops: 0, bench.Asks: 1, bench.NotChecked: 2, bench.Holds: 3}
	sort.SliceStable(list, func(i, j int) bool { return rank[list[i].Kind] < rank[list[j].Kind] })
	isAirUnread := false
	for _, v := range list {
		isQuiet := v.Kind == bench.Holds || v.Kind == bench.NotChecked
		switch {
		case v.Subject == bench.Heat && v.Kind == bench.Stops && len(b.Reasons) > 0: // the answer says it
		case isQuiet && (v.Subject == bench.Fire || v.Subject == bench.Heat || v.Subject == bench.Film):
		case awaitsAir(v) && isAirUnread: // said once, both are read at once
		case v.Kind == bench.Holds && (v.Subject != bench.Explosive || v.Value == 0): // vapour in a closed space has its caution
			held = append(held, v)
		default:
			told = append(told, v)
			isAirUnread = isAirUnread || awaitsAir(v)
		}
	}
	return told, held
}

// awaitsAir says if the air has to be read first.
func awaitsAir(v bench.Verdict) bool {
	return v.Kind == bench.NotChecked && (v.Subject == bench.Dew || v.Subject == bench.Humidity)
}

// strips are a verdict a line. The mark tells those of the answer and those of a sheet apart.
func strips(s *page.State, list []bench.Verdict, mark string) []html {
	var lines []html
	for i, v := range list {
		if awaitsAir(v) {
			lines = append(lines, verdict(unchecked, words.FitUnchecked, words.ReadTheAir, bench.AirSheet+".fit"))
			continue
		}
		why := ""
		if v.Err != nil {
			why = words.Dose(v.Err, s.Plan.Job.Units)
		}
		first, rest := words.Verdict(v, why, s.Plan.Job.Units)
		lines = append(lines, verdict(kindWords[v.Kind], first, rest, opensAt(v.Opens, mark+strconv.Itoa(i))))
	}
	return lines
}

var kindWords = map[bench.Kind]string{bench.Holds: holds, bench.Asks: asks, bench.Stops: stops, bench.NotChecked: unchecked}

// opensAt is the sheet that a strip opens, told apart from the others that open it too.
func opensAt(sheet, mark string) string {
	switch {
	case sheet == "" || strings.HasPrefix(sheet, "buildup."):
		return sheet // a step has a sheet of its own
	case strings.HasPrefix(sheet, job.BenchPath+"."):
		sheet = "setup" // there it is typed
	}
	return sheet + "." + mark
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
	if b := s.Bench(); b.IsRatio && b.Putty == nil { // its minutes are those of the maker's sheet
		return ""
	}
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
