package draw

import "shedreckoner/wasm/markup"

// DayPlot is the course of a day.
type DayPlot struct {
	Title          string
	Hours, Degrees Axis
	Air, Dew       []Point
	Working        []Interval // hours that are fit to work in
	Now            *Moment
	LatestStart    *Moment

	AirName, DewName, WorkingName string // of the key
}

// Moment is an hour with what stands there.
type Moment struct {
	At   float64
	Text string
}

// Day draws the air and the dew point over a day, the working hours shaded.
// Without a range on both axes it draws nothing.
func Day(p DayPlot) markup.HTML {
	f, ok := newFrame(p.Hours, p.Degrees, 2)
	if !ok {
		return markup.HTML{}
	}
	key, rows := f.key([]entry{{"curve", p.AirName}, {"curve dashed", p.DewName}, {"shaded", p.WorkingName}})
	parts := []markup.HTML{f.inside(f.shade(p.Working)), f.axes(), f.inside(f.line("curve", p.Air), f.line("curve dashed", p.Dew)),
		f.moment("today dashed", p.LatestStart, 1), f.moment("today", p.Now, 0)} // the lower text last: it lies over the other's line
	return picture("plot", plotWidth, f.height(rows), p.Title, append(parts, key...)...)
}

func (f frame) moment(class string, m *Moment, row int) markup.HTML {
	if m == nil {
		return markup.HTML{}
	}
	return f.upright(class, m.Text, m.At, row)
}
