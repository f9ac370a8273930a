package view

import (
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// stepField is a field of a step with what else it has.
func stepField(s *page.State, path, key string) html {
	at := path + "." + key
	card := s.Plan.Job.CardByKey(s.Doc().Get(path + ".card"))
	switch key {
	case "thinner":
		return fieldWith(s, at, fieldExtras{Default: words.None})
	case "sanded-off":
		if card != nil && card.SandedOff.Known {
			return fieldWith(s, at, fieldExtras{Default: unit.Number(float64(card.SandedOff.Value)*100, 3)})
		}
	}
	return fieldWith(s, at, stepExtras(key))
}

// stepFieldExtras is what else fields of a step have, by key.
var stepFieldExtras = []struct {
	key string
	fieldExtras
}{
	{"wait", fieldExtras{Default: words.NotSaid, Hint: words.NotSaidOpen}},
	{"patch", fieldExtras{Default: words.NoneYet, Hint: words.PatchHint}},
	{"goes", fieldExtras{Default: "1", Hint: words.RoundsHint}},
	{"go-takes", fieldExtras{Default: words.None}},
	{"swallowed", fieldExtras{Default: "0", Hint: words.SwallowedHint}},
	{"first", fieldExtras{Default: words.SuchAsP220}},
	{"last", fieldExtras{Default: words.SuchAsP1200, Hint: words.LastGradeHint}},
	{"grades", fieldExtras{Default: words.TheUsualOnes, Hint: words.GradesHint}},
	{"wet-from", fieldExtras{Default: words.AllDry, Hint: words.WetHint}},
	{"scratch", fieldExtras{Default: "0.33", Hint: words.ScratchHint}},
	{"texture", fieldExtras{Default: words.ByTheMethod, Hint: words.TextureHint}},
	{"least", fieldExtras{Default: words.AsItsCardSays}},
	{"cut-most", fieldExtras{Default: words.AsRead}},
	{"raise", fieldExtras{Default: "0", Hint: words.RaiseHint}},
	{"cut-cost", fieldExtras{Default: "3", Hint: words.CutCostHint}},
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

// budgetFields is what a build-up's film is worked out with.
func budgetFields(s *page.State, path string) html {
	return join(
		fieldWith(s, path+".thin-share", fieldExtras{Default: "5", Hint: words.ThinShareHint}),
		fieldWith(s, path+".removal-cv", fieldExtras{Default: "40", Hint: words.MarkAssumption}),
		fieldWith(s, path+".unfair", fieldExtras{Default: "0", Hint: words.UnfairHint}),
		fieldWith(s, path+".strip", fieldExtras{Default: "25 mm", Hint: words.StripHint}))
}
