package plan

import "shedreckoner/calc/job"

// CheckThinner holds what a step adds of thinner, with the wax solution that its
// card has, against the card's limit. Errors: *ThinnerError, ErrNoThinner.
func (p *Plan) CheckThinner(s *job.Step, c *job.Card) error {
	m := maker{plan: *p}
	return m.checkThinner(s, c)
}
