package job

import (
	"slices"
	"strings"

	"shedreckoner/calc/material"
)

// A file or a link carries a job with what it needs of the shed in which it was
// made. The shed to which it comes stays as it is: a card that says something
// different there comes in beside it, as a card of its own.

// refersToCard lists the fields whose text is the key of a card.
var refersToCard = []string{"card", "catalyst", "against"}

// cardAt is the key of the card that a line of a job refers to; "": none.
func cardAt(l Line) string {
	if _, key := Split(l.Path); slices.Contains(refersToCard, key) && !IsShed(l.Path) && FieldAt(l.Path) != nil {
		return l.Text
	}
	return ""
}

// usedCards are the keys of the cards that a job refers to.
func usedCards(rest Document) []string {
	var keys []string
	for _, l := range rest.lines {
		if key := cardAt(l); key != "" && !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// Portable is the job with what it needs of the shed: units, currency, and the
// sheets of its cards. Stock, tests and what the hand takes are left out.
func Portable(d Document) Document {
	shed, rest := SplitShed(d)
	lines := slices.Concat(rest.without("kept").lines, shed.At("units"), shed.At("currency"))
	var own []string
	for _, key := range usedCards(rest) {
		lines = append(lines, carried(shed, key)...)
		if slices.Contains(shed.Items("card"), key) {
			own = append(own, key)
		}
	}
	return Of(lines).Set("card", strings.Join(own, " "))
}

// IsSame says if an incoming document is the job that is here: the same to the last
// line, or the same job with the same sheets.
func IsSame(here, incoming Document) bool {
	same := func(a, b Document) bool { return slices.Equal(a.without("kept").lines, b.without("kept").lines) }
	return same(here, incoming) || !IsBlank(here) && same(Portable(here), Portable(incoming))
}

// staysAtHome lists the lines of a card that belong to the shed and not to its
// sheet.
var staysAtHome = []string{"stock", "counted", "patch", "grade", "buy"}

// carried is the lines of a card that go with a job.
func carried(shed Document, key string) []Line {
	card := "card." + key
	var lines []Line
	for _, l := range slices.Concat(shed.Under(card), shed.Under(real+card)) {
		field, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimPrefix(l.Path, real), card+"."), ".")
		if !slices.Contains(staysAtHome, field) {
			lines = append(lines, l)
		}
	}
	return lines
}

// sheetOf is what a card says, without what it costs.
func sheetOf(shed Document, key string) []Line {
	var lines []Line
	for _, l := range carried(shed, key) {
		path, isSheet := strings.CutPrefix(l.Path, "card."+key+".")
		if isSheet && !IsAtOrUnder(path, "pack") {
			lines = append(lines, Line{path, l.Text})
		}
	}
	return lines
}

// Into brings an incoming job, with what it carries, into the shed of another
// document. Nothing in that shed changes. A card that says something different
// there comes in as a card of its own, to which the job then refers; brought has
// the names of these. A shed without a card, test or lesson takes everything.
// Errors: *LimitError where there would be too many cards.
func Into(here, incoming Document) (d Document, brought []string, err error) {
	shed, _ := SplitShed(here)
	incoming = incoming.without("kept")
	if len(shed.without("units", "currency", "bench", "day").lines) == 0 {
		return intoBare(shed, incoming), nil, nil
	}
	theirs, rest := SplitShed(inUnits(incoming, ReadUnits(shed)))
	rest = rest.without("ticked")
	d = Join(shed, rest)
	to := map[string]string{}
	for _, key := range usedCards(rest) {
		isListed := slices.Contains(theirs.Items("card"), key)
		_, ships := material.Find(key)
		switch {
		case ships && len(sheetOf(theirs, key)) == 0, isListed && d.hasCard(key) && slices.Equal(sheetOf(theirs, key), sheetOf(d, key)),
			ships && slices.Equal(sheetOf(theirs, key), sheetOf(d, key)):
		case !ships && !isListed: // refers to nothing, and must not find a different material here
			if d.hasCard(key) {
				to[key] = d.nextID("card")
				d = RetireCard(d, "card."+to[key])
			}
		default:
			var name string
			if d, to[key], name = d.bring(theirs, key); name != "" {
				brought = append(brought, name)
			}
		}
	}
	if n := len(d.Items("card")); n > MaxCards {
		return Document{}, nil, &LimitError{"card", cards, n}
	}
	return d.referring(to), brought, nil
}

// intoBare brings everything into a shed where only units, tools and the like were
// chosen; these are kept.
func intoBare(shed, incoming Document) Document {
	own := shed.without("units")
	units := ReadUnits(shed)
	if len(shed.without("units.decimal").At("units")) == 0 {
		units = ReadUnits(incoming)
		units.Comma = HasComma(shed) || HasComma(incoming)
	}
	return Join(inUnits(incoming, units), own)
}

func (d Document) hasCard(key string) bool { return slices.Contains(d.Items("card"), key) }

// bring puts a card beside the others, or finds one of the builder's that says the
// same.
func (d Document) bring(theirs Document, key string) (after Document, as, name string) {
	shipped, ships := material.Find(key)
	lines := carried(theirs, key)
	if ships {
		name = theirs.Get("card." + key + ".name")
		if name == "" {
			name = shipped.Name
		}
		lines = append(lines, Line{"card." + key + ".base", key}, Line{"card." + key + ".name", name + " (theirs)"})
	}
	came := Of(lines)
	for _, own := range d.Items("card") {
		if slices.Equal(sheetOf(d, own), sheetOf(came, key)) {
			return d, own, ""
		}
	}
	d, item := d.Add("card")
	for _, l := range came.lines {
		d = d.Set(strings.Replace(l.Path, "card."+key+".", item+".", 1), l.Text)
	}
	_, as = Split(item)
	return d, as, d.Get(item + ".name")
}

// referring points the job's references to cards at other ones.
func (d Document) referring(to map[string]string) Document {
	lines := slices.Clone(d.lines)
	for i, l := range lines {
		if key := to[cardAt(l)]; key != "" {
			lines[i].Text = key
		}
	}
	return Document{lines}
}
