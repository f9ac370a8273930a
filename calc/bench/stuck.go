package bench

import (
	"errors"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

// ErrNoSurface says that nothing is known of the temperature of the film.
var ErrNoSurface = errors.New("bench: the temperature of the surface isn't known")

// Stuck says what to do about a cup in the log that has been spread and doesn't go
// off: how long to wait at this temperature, what warming does, when to scrape. It
// uses the surface as it was read today, else as it was when the cup was weighed,
// the catalyst that went in, and the tests of its tin.
// Errors: plan.ErrNoCard, ErrNoSurface; as cure.Gel.Stuck, with what is known all
// the same.
func Stuck(p *plan.Plan, cup string, now Now) (cure.Stuck, error) {
	for i := range p.Job.Cups {
		c := &p.Job.Cups[i]
		if c.Path != cup {
			continue
		}
		b := newBencher(p, now)
		b.tin = &c.Tin
		if b.out.Card = p.Job.CardByKey(c.Card); b.out.Card == nil {
			return cure.Stuck{}, plan.ErrNoCard
		}
		b.out.IsRatio = len(b.out.Card.Families) == 0
		surface := c.SurfaceTemp
		if b.typed.Surface.Step != nil && b.typed.ReadOn == now.Date {
			surface = b.typed.Surface
		}
		if surface.Step == nil {
			return cure.Stuck{}, ErrNoSurface
		}
		gelling{b}.gel()
		share := c.Share
		if b.out.IsRatio {
			share = working.Figure[unit.ByMass]{}
		} else if share.Step == nil {
			share = b.out.Gel.Catalyst
		}
		return b.out.Gel.Stuck(surface, share)
	}
	return cure.Stuck{}, plan.ErrNoCard
}
