package job

import (
	"slices"
	"strings"

	"shedreckoner/calc/material"
)

// A file or a link carries a job with what it needs of the shed that it was made
// in. The shed that it comes to stays as it is: a card that says something else
// there comes in beside it, as a card of its own.

// refersToCard are the fields whose text is the key of a card.
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

// Needed is the job with what it needs of the shed: units, currency, and what
// the sheets of its cards say. Stock, tests and what the hand takes stay at home.
func Needed(d Document) Document {
	shed, rest := Parted(d)
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

// IsSame says if a document that came in is the job that is here: the same to
// the last line, or the same job with the same sheets.
func IsSame(here, incoming Document) bool {
	same := func(a, b Document) bool { return slices.Equal(a.without("kept").lines, b.without("kept").lines) }
	return same(here, incoming) || !IsBlank(here) && same(Needed(here), Needed(incoming))
}

// staysAtHome are the lines of a card that are of the shed and not of its sheet.
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
		if isSheet && !isAtOrUnder(path, "pack") {
			lines = append(lines, Line{path, l.Text})
		}
	}
	return lines
}

// Into brings a job that came in, with what it carries, into the shed of
// another document. Nothing of that shed changes. A card that says something
// else there comes in as one of its own, and the job refers to that; brought is
// their names. A shed with no card, test or lesson yet takes all that comes.
// Errors: *LimitError where there would be too many cards.
func Into(here, incoming Document) (d Document, brought []string, err error) {
	shed, _ := Parted(here)
	incoming = incoming.without("kept")
	if len(shed.without("units", "currency", "bench", "day").lines) == 0 {
		return intoBare(shed, incoming), nil, nil
	}
	theirs, rest := Parted(inUnits(incoming, ReadUnits(shed)))
	rest = rest.without("ticked")
	d = Join(shed, rest)
	to := map[string]string{}
	for _, key := range usedCards(rest) {
		isListed := slices.Contains(theirs.Items("card"), key)
		_, ships := material.Find(key)
		switch {
		case ships && len(sheetOf(theirs, key)) == 0, isListed && d.hasCard(key) && slices.Equal(sheetOf(theirs, key), sheetOf(d, key)),
			ships && slices.Equal(sheetOf(theirs, key), sheetOf(d, key)):
		case !ships && !isListed: // refers to nothing, and must not find another material here
			if d.hasCard(key) {
				to[key] = d.nextID("card")
				d = StaysGone(d, "card."+to[key])
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

// intoBare brings all that came in into a shed where only units, tools and the
// like were chosen; these hold.
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

// bring puts a card beside the others, or finds the own one that says the same.
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

// referring has the job's references to cards lead to others.
func (d Document) referring(to map[string]string) Document {
	lines := slices.Clone(d.lines)
	for i, l := range lines {
		if key := to[cardAt(l)]; key != "" {
			lines[i].Text = key
		}
	}
	return Document{lines}
}
