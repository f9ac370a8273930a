package job

import (
	"slices"
	"strings"

	"shedreckoner/calc/unit"
)

// Units is the scale that each measure is shown and typed in, and the decimal
// mark of both.
type Units struct {
	Comma  bool // a decimal comma: 1.500 is then refused, as 1,500 always is
	chosen map[unit.Measure]unit.Scale
}

// Scale gives the measure's scale: the chosen one, or the metric default.
func (u Units) Scale(m unit.Measure) unit.Scale {
	if s := u.chosen[m]; s != unit.NoScale {
		return s
	}
	return m.Scales()[0]
}

// unitsPath is where the choice of a measure's scale is kept.
func unitsPath(m unit.Measure) string { return "units." + m.Key() }

// ReadUnits reads the choice of scales; what isn't a scale of its measure
// counts as not chosen.
func ReadUnits(d Document) Units {
	u := Units{HasComma(d), map[unit.Measure]unit.Scale{}}
	for _, m := range unit.Choosable {
		if s := m.Scale(d.Get(unitsPath(m))); s != unit.NoScale {
			u.chosen[m] = s
		}
	}
	return u
}

// SetUnit chooses the scale of a measure. It first writes the old unit into
// every bare number of that measure, so that 450 mm never becomes 450 in.
func SetUnit(d Document, m unit.Measure, to unit.Scale) Document {
	old := ReadUnits(d).Scale(m)
	if old == to {
		return d
	}
	return InUnit(d, "", m, old).Set(unitsPath(m), to.Symbol())
}

// InUnit writes a unit after every bare number of the measure that an item holds;
// of the whole document where no item is named.
func InUnit(d Document, item string, m unit.Measure, scale unit.Scale) Document {
	lines := slices.Clone(d.lines)
	for i, line := range d.lines {
		switch f := FieldAt(line.Path); {
		case f == nil || f.Measure != m || item != "" && !strings.HasPrefix(line.Path, item+"."):
		case f.Kind == Pasted:
			lines[i].Text = eachInUnit(line.Text, scale)
		case (f.Kind == Quantity || f.Kind == MassOrVolume) && unit.IsBare(line.Text):
			lines[i].Text += " " + scale.Symbol()
			if at, found := d.find(Real(line.Path)); found && d.lines[at].Text == line.Text { // what was confirmed stays so
				lines[at].Text = lines[i].Text
			}
		}
	}
	return Document{lines}
}

// Where the choice of the decimal mark is kept, and what stands there for a comma.
const decimalPath, comma = "units.decimal", "comma"

// HasComma says if the job writes decimals with a comma.
func HasComma(d Document) bool { return d.Get(decimalPath) == comma }

// SetComma chooses the decimal mark. A figure that would mean two things from then
// on gets one more zero: 1.125 becomes 1.1250, which is the same in both.
func SetComma(d Document, on bool) Document {
	if !on {
		return d.Set(decimalPath, "")
	}
	lines := slices.Clone(d.lines)
	for i, line := range lines {
		if f := FieldAt(line.Path); f != nil && (f.isNumber() || f.Kind == Pasted) {
			lines[i].Text = unit.Ungrouped(line.Text)
		}
	}
	return Document{lines}.Set(decimalPath, comma)
}

// SetSystem chooses metric or US customary units for every measure.
func SetSystem(d Document, us bool) Document {
	for _, m := range unit.Choosable {
		to := m.Scales()[0]
		if us {
			to = m.US()
		}
		d = SetUnit(d, m, to)
	}
	return d
}
