package page

import (
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// stepIn is by how much − and + move a figure, in the unit it is typed in.
func stepIn(scale unit.Scale) (by decimal.Decimal, known bool) {
	switch scale {
	case unit.InCelsius, unit.InFahrenheit, unit.InPercent, unit.InPure, unit.InMinute, unit.InHour, unit.InDay, unit.InMil:
		return decimal.New(1, 0), true
	case unit.InGram, unit.InMillilitre:
		return decimal.New(10, 0), true
	case unit.InMicrometre:
		return decimal.New(25, 0), true
	case unit.InKilogram, unit.InPound, unit.InLitre, unit.InMillimetre:
		return decimal.New(1, -1), true
	case unit.InOunce, unit.InUSFluidOunce, unit.InImperialFluidOunce:
		return decimal.New(5, -1), true
	case unit.InInch:
		return decimal.New(5, -2), true
	}
	return decimal.Decimal{}, false
}

// stepped is the measures of what is read off or set, and corrected by a little.
// What is taped, or copied from a sheet, is typed.
var stepped = []unit.Measure{
	unit.Temperatures, unit.Percents, unit.Films, unit.Fills, unit.CupWeights, unit.Minutes, unit.Hours, unit.Days, unit.Numbers,
}

// HasSteps reports whether − and + stand beside the field at the path, whose bare numbers
// are in the scale.
func HasSteps(path string, f *job.Field, scale unit.Scale) bool {
	if strings.HasPrefix(path, "card.") {
		return false
	}
	if f.Kind == job.Whole {
		return true
	}
	if f.Kind != job.Quantity && f.Kind != job.MassOrVolume || !slices.Contains(stepped, f.Measure) {
		return false
	}
	by, _ := stepOf(f, scale)
	return 4*by.InexactFloat64() <= scale.From(f.Max)-scale.From(f.Min) // a scale's own step isn't moved by ten grams
}

// scaleOf is the scale in which a bare number is read in the field.
func scaleOf(f *job.Field, units job.Units) unit.Scale {
	if f.Measure == unit.NoMeasure {
		return unit.InPure
	}
	return units.Scale(f.Measure)
}

// stepOf gives the step of a field in a unit: a tenth where a whole one is a
// large part of all that it takes, such as catalyst.
func stepOf(f *job.Field, scale unit.Scale) (decimal.Decimal, bool) {
	by, known := stepIn(scale)
	if scale == unit.InPercent && f.Max <= 0.1 {
		by = decimal.New(1, -1)
	}
	return by, known
}

// step moves what is typed by a step, never out of what the field takes. A count
// begins at one. In any other empty field there is nothing to move, and no
// figure is guessed for it: the cursor goes there instead.
func step(s *State, m Message) []Effect {
	f := job.FieldAt(m.Path)
	units := s.Plan.Job.Units
	if f == nil || !HasSteps(m.Path, f, scaleOf(f, units)) {
		return nil
	}
	by := func(scale unit.Scale) (decimal.Decimal, bool) {
		step, known := stepOf(f, scale)
		if m.Path == amountPath {
			step = amountStep(s, scale, step)
		}
		if m.Text == "down" {
			step = step.Neg()
		}
		return step, known
	}
	bare := scaleOf(f, units)
	was := s.Doc().Get(m.Path)
	if was == "" && m.Path == amountPath {
		was = s.ProposedAmount()
	}
	if was == "" && f.Kind == job.Whole {
		was = countAt(s, m.Path)
	}
	next, ok := unit.Step(was, bare, by)
	if !ok && f.Kind == job.MassOrVolume {
		next, ok = unit.Step(was, unit.InMillilitre, by)
	}
	if !ok {
		return []Effect{{Kind: Focus, Key: "f-" + m.Path}}
	}
	if _, err := f.Read(next, units); err != nil {
		return nil
	}
	return set(s, Message{Path: m.Path, Text: next})
}

// countAt is what an empty count stands for: the coats of a step are as many as
// are planned.
func countAt(s *State, path string) string {
	item, key := job.Split(path)
	if key != "coats" {
		return "0"
	}
	for _, b := range s.Plan.Buildups() {
		for _, step := range b.Steps {
			if step.Path == item && step.Coat != nil {
				return strconv.Itoa(int(step.Coat.Coats.Value))
			}
		}
	}
	return "0"
}
