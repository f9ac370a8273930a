package cure

import (
	"math"

	"shedreckoner/calc/source"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// Stuck is what to do about a film that doesn't go off. Nothing is ever added to
// it: it is warmed, waited for, and scraped off. Times count from catalyst in.
type Stuck struct {
	Wait   working.Figure[unit.Time] // to the late end of the gel time at this surface
	Warm   working.Figure[unit.Temperature]
	Warmed working.Figure[unit.Time] // the late end with the part as warm as Warm; no Step: it is as warm
	Scrape working.Figure[unit.Time] // from then on it is scraped off
}

// scrape is the time after which a film that is still wet won't cure any more.
var scrape = working.Rule1[unit.Time, unit.Time]{Rule: &working.Rule{Formula: "t_s = max(120, 3 × t)", Source: source.Ref{Document: &source.House, Place: "three times the late end of the gel time, and no less than two hours"}, Mark: source.Assumption,
	Result: working.Arg{Symbol: "t_s", Meaning: "scrape off, from catalyst in", Scale: unit.InMinute, Min: 120, Max: 3e6},
	Args:   []working.Arg{{Symbol: "t", Meaning: "late end of the gel time", Scale: unit.InMinute, Min: 0, Max: 1e6}}},
	Code: func(late unit.Time) unit.Time { return unit.Time(math.Max(float64(2*unit.Hour), 3*float64(late))) }}

// Stuck says how long to wait for a film with a given share of catalyst at the
// surface's temperature, what warming it to the card's timed temperature does, and
// when to scrape it off. A fixed ratio has no catalyst figure.
// Errors: as Gel.At; too cold for minutes, the film is to be warmed first.
// Source: assumption.
func (g Gel) Stuck(surface working.Figure[unit.Temperature], catalyst working.Figure[unit.ByMass]) (Stuck, error) {
	var s Stuck
	if surface.Value < g.Temperature.Value-lastBits {
		s.Warm = g.Temperature
		warmed, err := g.At(g.Temperature, catalyst)
		if err != nil {
			return Stuck{}, err
		}
		s.Warmed = warmed.Late
	}
	band, err := g.At(surface, catalyst)
	if err != nil {
		return s, err
	}
	s.Wait = band.Late
	s.Scrape, err = scrape.Figure(band.Late)
	return s, err
}
