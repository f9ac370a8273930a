package chance

import (
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
)

// LeftInStock gives what is in stock of every card now, by the path of its stock,
// where cups of the job took some of what was counted: it has to be recorded before
// another job with other cups is worked on. "" says that nothing is left.
func LeftInStock(j *job.Job) map[string]string {
	left := map[string]string{}
	for i, card := range j.Cards {
		l := Line{Card: card, Shop: j.Shops[i]}
		l.stock(j)
		switch {
		case l.Taken.IsZero():
		case l.Stock.IsPositive():
			left[card.Path+".stock"] = unit.Ungrouped(l.Stock.String() + " " + plan.BasisScale(card).Symbol())
		default:
			left[card.Path+".stock"] = ""
		}
	}
	return left
}
