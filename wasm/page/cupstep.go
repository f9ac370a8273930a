package page

import (
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// A cup goes through four steps, one a screen: it is planned, weighed, gets its
// catalyst, and its clock runs. Weighing and the catalyst lie over the plan as
// sheets, so Back goes one step back, and what was weighed stays weighed. Once
// its catalyst is in, no way leads back to its dose.

// The sheets of the cup's steps.
const (
	WeighSheet    = "weigh"    // what goes into the cup, line by line
	CatalystSheet = "catalyst" // of the weighed cup: the dose alone
	NextCup       = "next"     // another cup is planned while one runs
	WontSheet     = "wont"     // a running cup won't go off
	FitSheet      = "fit"      // what holds of all that bears on a cup, each by itself
	AirMoreSheet  = "airmore"  // over today's air: what is assumed of the day until it is typed
	TodaySheet    = "today"    // over today's air: what else could go on

	WeighTestSheet = "weigh.test" // what goes into a timed test
)

// cupStepSheets are those on which a cup goes on.
var cupStepSheets = []string{WeighSheet, WeighTestSheet, CatalystSheet, NextCup}

// resumed lays the steps of a weighed cup open, where its builder left it.
func resumed(s *State) {
	if s.Screen == "cup" && len(s.Sheets) == 0 && len(OpenCups(s.Doc(), Weighed)) > 0 {
		s.Sheets = []string{WeighSheet, CatalystSheet}
	}
}

// hasStep reports whether a sheet of the cup's steps still has something to show.
func hasStep(d job.Document, key string) bool {
	switch key {
	case CatalystSheet:
		return len(OpenCups(d, Weighed)) > 0
	case WontSheet:
		return len(OpenCups(d, Running)) > 0
	}
	return true
}

// stepsDone takes the cup's steps away once the clock runs.
func stepsDone(s *State) {
	s.Sheets = slices.DeleteFunc(slices.Clone(s.Sheets), func(key string) bool {
		return slices.Contains(cupStepSheets, key)
	})
}

// chooseTool takes one of the four tools: what it is, and its step.
func chooseTool(s *State, m Message) []Effect {
	tool, step, _ := strings.Cut(m.Text, " ")
	at, known := toolSteps[tool]
	if !known {
		return nil
	}
	return edit(s, s.Doc().Set(job.BenchPath+".tool", tool).Set(job.BenchPath+"."+at, step), "")
}

// toolSteps is where each tool's step is typed.
var toolSteps = map[string]string{job.ByScale: "scale-step", job.BySyringe: "syringe-step"}

// HasTool reports whether a tool with its step is the one that is typed.
func (s *State) HasTool(key string) bool {
	tool, step, _ := strings.Cut(key, " ")
	typed := s.Doc().Get(job.BenchPath + ".tool")
	if typed == "" {
		typed = job.ByScale
	}
	return tool == typed && s.Doc().Get(job.BenchPath+"."+toolSteps[tool]) == step
}

// mixFor says what the cup is for: a coat that the job has to do, or a material.
func mixFor(s *State, m Message) []Effect {
	kind, key, _ := strings.Cut(m.Text, " ")
	at := func(name string) string { return job.BenchPath + "." + name }
	doc := s.Doc()
	switch kind {
	case "coat":
		if step, _ := s.Plan.StepAt(key); step == nil {
			return nil
		}
		doc = doc.Set(at("for"), "").Set(at("step"), key).Set(at("card"), "").Set(at("amount"), "").Set(at("method"), "")
	case "card":
		if s.Plan.Job.CardByKey(key) == nil {
			return nil
		}
		doc = doc.Set(at("for"), job.ForAmount).Set(at("step"), "").Set(at("card"), key)
	default:
		return nil
	}
	effects := edit(s, doc, "")
	return append(effects, back(s, Message{})...)
}

// amountPath is how large the cup is.
const amountPath = job.BenchPath + ".amount"

// ProposedAmount is the cup's size while none is typed, in the job's unit; "" where none can be proposed.
func (s *State) ProposedAmount() string {
	size := &s.Bench().Size
	if !size.Proposed || size.Mass.Step == nil {
		return ""
	}
	return unit.Typed(float64(size.Mass.Value), s.Plan.Job.Units.Scale(unit.CupWeights))
}

// amountStep is by how much − and + move the cup's size: by the dial's step while
// it is planned, finely on the scale, where the figure follows what it shows.
func amountStep(s *State, scale unit.Scale, usual decimal.Decimal) decimal.Decimal {
	if scale != unit.InGram {
		return usual
	}
	if s.Sheet() == WeighSheet {
		return decimal.NewFromInt(1)
	}
	return decimal.NewFromFloat(unit.InGram.From(float64(s.Bench().Size.Step))).Round(0)
}

// benchSheet is the sheet on which a figure of the cup is typed that isn't on the
// screen itself.
func benchSheet(key string) string {
	switch key {
	case "product-temp", "tool", "scale-step", "syringe-step", "drops", "mark", "thinner", "thinner-by", "pigment", "catalyst":
		return "setup"
	case "method", "film":
		return "how"
	case "mixing", "stretch":
		return bench.HandSheet
	case "tin":
		return bench.TinSheet
	case "agency", "locker":
		return bench.SpaceSheet
	case "card", "step", "for":
		return "what"
	}
	if strings.HasPrefix(key, "flow-") {
		return "flow"
	}
	return ""
}

// AsksAhead reports whether the coldest hour ahead is asked for beside the surface: it stays there once it is typed.
func (s *State) AsksAhead() bool {
	return s.Bench().IsNearCold()
}

// airMore is what is assumed of the day until it is said.
var airMore = []string{"read-at", "sun", "colour", "sunrise"}

// benchSheets is what must lie over the cup's screen for a figure of it to be
// seen: a sheet of its own, or the plan of the next cup where a clock stands.
func benchSheets(s *State, path string) []string {
	item, key := job.Split(path)
	if isAhead := key == "ahead" && !s.AsksAhead(); isAhead || item == job.DayPath && slices.Contains(airMore, key) {
		return []string{bench.AirSheet, AirMoreSheet}
	}
	if item == job.DayPath {
		return []string{bench.AirSheet}
	}
	if sheet := benchSheet(key); sheet != "" {
		return []string{sheet}
	}
	if len(OpenCups(s.Doc(), Running)) > 0 || s.LastMayHaveCatalyst() {
		return []string{NextCup}
	}
	return nil
}
