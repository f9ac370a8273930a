package chance

import "shedreckoner/calc/working"

// Rules is every rule that is declared here: what joins the sums of an order to
// cards and log.
func Rules() []*working.Rule {
	return working.List(&plannedByComb, &plannedForArea, combMean, &stockLeftMass, &stockLeftVolume)
}
