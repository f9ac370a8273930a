package schedule

import "shedreckoner/calc/working"

// Rules is every rule that is declared here: how waits lengthen in the cold.
func Rules() []*working.Rule {
	return working.List(&waitLonger, &waitShorter)
}
