package words

import (
	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// FaultWords is what is said of a cause.
type FaultWords struct {
	key    string
	Cause  string // as a sentence
	Sign   string // what the log's figure is; "" where no log shows it
	Remedy string
	Next   string // what avoids it next time; a figure follows where there is one
}

// faultWords is the words of every cause.
var faultWords = []FaultWords{
	{"cold", "The surface was colder than the card allows.", "Surface",
		"Warm the part, shed and all, and wait a day. Add nothing.", "Keep the surface, through the cure too, at no less than"},
	{"under-table", "Less catalyst went in than the table has for this surface.", "Catalyst, by mass",
		"Warm the part and wait a day. What is still wet then is scraped off.", "At such a surface, no less than"},
	{"under-floor", "Less catalyst went in than warmth can make up for.", "Catalyst, by mass",
		"Scrape it off, wash, sand, coat again. A second dose doesn't mix in.", "Never less than"},
	{"no-wax", "No wax in an open coat: air keeps its surface from curing. Under the next coat that is as it should be.", "Wax solution, by mass of product",
		"Put on the next coat, or a last one with wax, or release film over one that is still wet. Or wipe and sand off the sticky surface.", "For the last coat, wax solution of at least"},
	{"thin", "The film was too thin: it loses its styrene before it cures.", "Wet film of one coat",
		"It stays as it is. Sand or scrape to sound film, and put on a full coat.", "Wet, by the comb, at least"},
	{"over-dosed", "More catalyst went in than the film can bind: it softens what it cured.", "Catalyst, by mass",
		"It stays soft. Sand or scrape it off, and coat again.", "At such a surface, no more than"},
	{"acetone", "Acetone got in: from a wet brush or roller, or as thinner.", "",
		"It stays soft. Scrape it off, let the ground dry, coat again.", "Dry every washed tool before it meets the cup."},
	{"half-cured", "It went over a half-cured coat, and its styrene lifted that.", "Hours since the coat before",
		"Let both cure hard, sand the wrinkles out, coat again.", "Between coats, wait at least"},
	{"thick", "The coat was too thick for one pass: air can't leave, and it slides.", "Wet film of one coat",
		"Let it cure hard, sand it flat, fill or coat what is open.", "Wet, by the comb, at most"},
	{"damp", "The air was damper than the card allows.", "Humidity",
		"Let it cure, sand to below the pinholes, fill them with a squeegee coat.", "Coat in air of at most"},
	{"dew", "The surface was too near the dew point: water in the film.", "Surface over dew point",
		"Let it cure, sand to below the pinholes, wash, and coat in dry air.", "Keep the surface over the dew point by"},
	{"fast", "It gelled sooner than expected: air had no time to leave.", "Minutes to the gel",
		"Sand to below the pinholes, fill them with a squeegee coat.", "Cool the product or coat earlier in the day: it should last at least"},
	{"pressure", "Too much pressure at the gun, or water in its air.", "",
		"Sand to below the pinholes, fill them with a squeegee coat.", "Drain the trap, and spray a panel first."},
	{"over-thinned", "It was thinned more than the card allows.", "Thinner",
		"Let it cure hard, cut the runs with a blade, sand flat.", "Thin by at most"},
	{"too-much-wax", "Too much wax in the coat: it floats and pulls the film apart.", "Wax solution, by mass of product",
		"Let it cure, sand all of the wax off, wipe, coat again.", "Wax solution of at most"},
	{"silicone", "Silicone or grease on the ground: from polish, sprays, hands.", "",
		"Let it cure, wash with solvent, clean rags each time, sand, wash again, coat.", "Wash before you sand, not after; no silicone in the shed."},
	{"polished-soon", "It was polished before it had cured through: the film went on shrinking.", "Hours until it was polished",
		"Wait until it stops moving, then sand and polish again.", "Before polishing, at 20 °C, wait at least"},
	{"dark", "A dark part in the sun: its heat goes on with the cure, and the ground shows.", "The part stood dark in the sun.",
		"Let it bake until it stops moving, then sand and polish again.", "Shade it for the first weeks, or cure it warm before it is faired last."},
	{"post-cure", "The ground or filler under it hadn't cured through.", "",
		"Wait until it stops moving, then sand and polish again.", "Let filler cure warm before it is coated."},
	{"settled", "The filler of the product settled: other cups came out of this tin before.", "Cups before it from this tin",
		"It may polish out. If not: sand, and put on a coat from a stirred tin.", "Stir from the bottom of the tin at every opening."},
	{"unstirred", "The tin wasn't stirred to the bottom.", "",
		"It may polish out. If not: sand, and put on a coat from a stirred tin.", "Stir from the bottom of the tin at every opening."},
}

// FaultText gives the words of a cause.
func FaultText(f *fault.Found) FaultWords {
	for _, words := range faultWords {
		if words.key == f.Key {
			return words
		}
	}
	return FaultWords{}
}

// SignText says what the log shows of a cause: "Surface: 12 °C, at least 15 °C".
func SignText(f *fault.Found, units job.Units) string {
	words := FaultText(f).Sign
	if f.Sign.IsFact {
		return words
	}
	if f.Sign.Scale == unit.InPure {
		return words + ": " + unit.Number(f.Sign.Got, 3) + "."
	}
	if f.Sign.IsPlanned {
		words += ", as planned"
	}
	limit := "; should be at least "
	if f.Sign.IsCeiling {
		limit = "; should be at most "
	}
	return words + ": " + signFigure(f.Sign.Got, f.Sign.Scale, units) + limit + signFigure(f.Sign.Limit, f.Sign.Scale, units) + "."
}

// NextText says what avoids it next time, with its figure.
func NextText(f *fault.Found, units job.Units) string {
	text := "Next time: " + lower(FaultText(f).Next)
	if text[len(text)-1] == '.' {
		return text
	}
	if !f.Known {
		return text + " what the card says."
	}
	return text + " " + signFigure(f.Sign.Limit, f.Sign.Scale, units) + "."
}

// signFigure writes a figure in the job's unit of its kind.
func signFigure(si float64, scale unit.Scale, units job.Units) string {
	for _, m := range []unit.Measure{unit.Films, unit.Temperatures} {
		if m.Scales()[0] == scale {
			scale = units.Scale(m)
		}
	}
	if scale == unit.InPure {
		return unit.Number(si, 3)
	}
	return unit.Write(si, scale, 3)
}

// What a fault may come from.
const (
	BorneOut          = "What the log bears out"
	NoSignAmongOthers = "No sign in the log, in no special order"
	NoSignAtAll       = "The log shows no sign. Possible causes, in no special order"
	Contradicted      = "What the log contradicts"
	WaitingIsNoCure   = "Waiting won't fix it."
	NoCombRead        = "No comb was read."
	WaitForIt         = "Wait: it may yet cure."
)

// FaultSources says what a list of causes rests on.
func FaultSources(sources string) string {
	return "Based on " + sources + ", not on a laboratory's findings. The maker's sheet overrules it."
}
