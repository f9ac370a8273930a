package schedule

import "shedreckoner/calc/working"

// Rules is every rule that is declared here: how waits lengthen in the cold.
var Rules = working.List(&waitLonger, &waitShorter)
