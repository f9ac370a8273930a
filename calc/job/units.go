package job

import "shedreckoner/calc/unit"

// Units is the scale that each measure is shown and typed in.
type Units struct{ chosen map[*unit.Measure]*unit.Scale }

// Scale gives the measure's scale: the chosen one, or the metric default.
func (u Units) Scale(m *unit.Measure) *unit.Scale {
	if s := u.chosen[m]; s != nil {
		return s
	}
	return m.Scales[0]
}

// unitsPath is where the choice of a measure's scale is kept.
func unitsPath(m *unit.Measure) string { return "units." + m.Key }

// ReadUnits reads the choice of scales; what isn't a scale of its measure
// counts as not chosen.
func ReadUnits(d Document) Units {
	u := Units{map[*unit.Measure]*unit.Scale{}}
	for _, m := range unit.Chosen {
		if s := m.Scale(d.Get(unitsPath(m))); s != nil {
			u.chosen[m] = s
		}
	}
	return u
}

// SetUnit chooses the scale of a measure. It first writes the old unit into
// every bare number of that measure, so that 450 mm never becomes 450 in.
func SetUnit(d Document, m *unit.Measure, to *unit.Scale) Document {
	old := ReadUnits(d).Scale(m)
	if old == to {
		return d
	}
	for _, line := range d.Lines() {
		if f := FieldAt(line.Path); f != nil && (f.Kind == Quantity || f.Kind == MassOrVolume) && f.Measure == m && unit.IsBare(line.Text) {
			full := line.Text + " " + old.Symbol
			if d.Get(Real(line.Path)) == line.Text { // what was confirmed stays so
				d = d.Set(Real(line.Path), full)
			}
			d = d.Set(line.Path, full)
		}
	}
	return d.Set(unitsPath(m), to.Symbol)
}

// SetSystem chooses metric or US customary units for every measure.
func SetSystem(d Document, us bool) Document {
	for _, m := range unit.Chosen {
		to := m.Scales[0]
		if us {
			to = m.US
		}
		d = SetUnit(d, m, to)
	}
	return d
}
