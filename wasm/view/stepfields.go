package view

import (
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
)

// stepField is a field of a step with what it has besides.
func stepField(s *page.State, path, key string) html {
	at := path + "." + key
	card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card"))
	switch key {
	case "thinner":
		return fieldWith(s, at, fieldExtras{Default: "none"})
	case "sanded-off":
		if card != nil && card.SandedOff.Known {
			return fieldWith(s, at, fieldExtras{Default: unit.Number(float64(card.SandedOff.Value)*100, 3)})
		}
	}
	return fieldWith(s, at, stepExtras(key))
}

// stepFieldExtras is what fields of a step have besides, by key.
var stepFieldExtras = []struct {
	key string
	fieldExtras
}{
	{"wait", fieldExtras{Default: "not said", Hint: "Not said: what depends on it stays open."}},
	{"patch", fieldExtras{Default: "none yet", Hint: "What needs a test patch stays red until its day is noted here or on the surface."}},
	{"goes", fieldExtras{Default: "1", Hint: "Spray, sand, find pinholes, spray again: how often."}},
	{"go-takes", fieldExtras{Default: "none"}},
	{"swallowed", fieldExtras{Default: "0", Hint: "Goes into the pores and leaves no film. Try a square on an offcut: what it took beyond its film."}},
	{"first", fieldExtras{Default: "such as P220"}},
	{"last", fieldExtras{Default: "such as P1200", Hint: "What the next layer and the polish find."}},
	{"grades", fieldExtras{Default: "the usual ones", Hint: "Left empty: the usual grades from the first to the last."}},
	{"wet-from", fieldExtras{Default: "all dry", Hint: "An electric sander and water don't go together."}},
	{"scratch", fieldExtras{Default: "0.33", Hint: "0.15 to 0.5: an assumption. Your own figures of what a grade takes stand above it."}},
	{"texture", fieldExtras{Default: "by the method", Hint: "What the coat before left: the first grade flattens it."}},
	{"least", fieldExtras{Default: "as its card says"}},
	{"cut-most", fieldExtras{Default: "as read"}},
	{"raise", fieldExtras{Default: "0", Hint: "More filler, less to cut. Below zero: the other way."}},
	{"cut-cost", fieldExtras{Default: "3", Hint: "For the best height of the datum: an assumption."}},
	{"alike", fieldExtras{Default: "1"}},
}

func stepExtras(key string) fieldExtras {
	for _, row := range stepFieldExtras {
		if row.key == key {
			return row.fieldExtras
		}
	}
	return fieldExtras{}
}

// budgetFields is what a build-up's film is reckoned with.
func budgetFields(s *page.State, path string) html {
	return join(
		fieldWith(s, path+".thin-share", fieldExtras{Default: "5", Hint: "The thin side is the film that all but this share of the area has."}),
		fieldWith(s, path+".removal-cv", fieldExtras{Default: "40", Hint: "An assumption: log your own."}),
		fieldWith(s, path+".unfair", fieldExtras{Default: "0", Hint: "How far the ground lies off the plane that the board sands to."}),
		fieldWith(s, path+".strip", fieldExtras{Default: "25 mm", Hint: "Along edges films run thin (× 0.7) and boards dwell (× 2): an assumption."}))
}
