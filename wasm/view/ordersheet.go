package view

import (
	"slices"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// orderSheet is all of one thing on the order: what to buy and how else, what the
// need comes from, its packs and prices.
func orderSheet(s *page.State, key string) shown {
	if t := thingOf(s, key); t != nil {
		return shown{Title: t.Name, Body: thingSheet(s, t)}
	}
	return shown{Title: words.NothingToBuy, Body: hint(words.NothingToBuy + ".")}
}

func thingSheet(s *page.State, t *page.Thing) html {
	first := t.Lines[0]
	if t.WaitsFor != "" {
		need := nothing
		if first.Why() != nil { // only its packs wait
			need = needLine(s, t)
		}
		return join(figure(s, "order."+t.Key, words.NeedName, "–", nil), hint(t.Small), action("find", t.WaitsFor, t.Key, words.PutItRight, "quiet"), need)
	}
	parts := []html{thingAnswer(s, t)}
	if first.Confidence != nil {
		parts = append(parts, region("ways-"+t.Key, "div", a("class", "bothways", "role", "group"), buyWays(s, first)),
			region("likely-"+t.Key, "div", a("class", "likely"), chancePicture(s, first), moves(s, first), hint(words.HowSimulated)))
	}
	parts = append(parts, region("trade-"+t.Key, "div", a("class", "verdicts"), trade(s, first.Card)))
	if on, heat := first.Card.KeptOn, first.Card.KeptOnHeat; on.Known {
		parts = append(parts, tape("off-"+t.Key, words.OffBy(days(on.Value), days(heat.Value))))
	}
	parts = append(parts, needLine(s, t),
		setup("packs", packsText(first.Card, first.Shop.Packs), page.PacksSheet+"."+t.Key), stockFields(s, t))
	return join(parts...)
}

// needLine leads to what the need comes from.
func needLine(s *page.State, t *page.Thing) html {
	l := t.Lines[0]
	return look("need", words.NeedFrom(page.Said(l.Planned(), l.Scale, s.Plan.Job.Units)), page.NeedSheet+"."+t.Key)
}

// thingOf is the thing on the order with the key; nil where there is none any more.
func thingOf(s *page.State, key string) *page.Thing {
	things := s.Things()
	if i := slices.IndexFunc(things, func(t page.Thing) bool { return t.Key == key }); i >= 0 {
		return &things[i]
	}
	return nil
}

// needSheet is what the need of one thing comes from, in every measure, each with its working.
func needSheet(s *page.State, key string) shown {
	t := thingOf(s, key)
	if t == nil {
		return shown{Title: words.NothingToBuy, Body: hint(words.NothingToBuy + ".")}
	}
	var parts []html
	for _, l := range t.Lines {
		parts = append(parts, region("line-"+l.Key(), "div", a("class", "figures"), lineFigures(s, l)))
	}
	return shown{Title: words.NeedOf(t.Name), Body: join(parts...)}
}

// packsSheet is the sizes that one thing is sold in, with their prices.
func packsSheet(s *page.State, key string) shown {
	c := s.Plan.Job.CardByKey(key)
	if c == nil {
		return shown{Title: words.NothingToBuy, Body: hint(words.NothingToBuy + ".")}
	}
	shipped, _ := material.Find(c.ShippedKey())
	return shown{Title: words.PacksOf(c.Name), Body: packForm(s, c, &shipped)}
}

// packsText is the sizes that are sold, in a line.
func packsText(c *job.Card, packs []job.Pack) string {
	var sizes []string
	priced := 0
	for _, p := range packs {
		sizes = append(sizes, p.Size.Amount.String())
		if p.HasPrice {
			priced++
		}
	}
	return words.SoldIn(sizes, words.BareSize(c.SoldBy), priced)
}

func days(t unit.Time) string {
	if t < unit.Day {
		return unit.Write(float64(t), unit.InHour, 2)
	}
	return words.Counted(int(t/unit.Day+0.5), "day", "days")
}

// thingAnswer is what to buy, large, and the three figures behind it.
func thingAnswer(s *page.State, t *page.Thing) html {
	l := t.Lines[0]
	hero, twin := t.Packs, t.Small
	if !t.Buys {
		hero = words.SheetCovered
	}
	box := answerBox{Label: t.Name, Hero: txt(hero), Twin: txt(twin)}
	if l.Grade == 0 {
		box.Facts = []fact{{lineAmount(s, l, l.Need), words.SheetNeed}, {lineAmount(s, l, l.Stock), words.SheetStock}}
		if c := l.Confidence; c != nil {
			box.Facts[0].Name = words.EnoughIn(c.Chance)
			if c.Reserve.Step != nil {
				box.Facts[0].Name = words.WithRepairs(box.Facts[0].Name)
			}
			box.Facts = append(box.Facts, fact{page.Roughly(c.Buys.Left.InexactFloat64(), l.Scale, s.Plan.Job.Units), words.SheetLeft})
		}
	}
	return answerOf("thing-"+t.Key, box)
}

// buyWays is the two ways to buy, side by side: the one that the list goes is pressed.
func buyWays(s *page.State, l *chance.Line) html {
	path := l.Card.Path + ".buy"
	onceWhy := words.WayOnceElseWhy
	if l.Confidence.AtOnce.Reserve.Step != nil {
		onceWhy = words.WayOnceWhy
	}
	return join(buyWay(s, l, path, "start", words.WayStart, words.WayStartWhy, l.Confidence.Start, !l.Shop.BuysAtOnce),
		buyWay(s, l, path, job.BuyAtOnce, words.WayOnce, onceWhy, l.Confidence.AtOnce, l.Shop.BuysAtOnce))
}

func buyWay(s *page.State, l *chance.Line, path, key, name, why string, w chance.Way, isChosen bool) html {
	price, keeps := "", ""
	if w.Buys.Bought.IsPriced && w.Buys.Bought.Cost.IsPositive() {
		price = page.Money(w.Buys.Bought.Cost.StringFixed(2), s)
	}
	if l.Card.ShelfLife.Known && w.Buys.Left.IsPositive() {
		keeps = page.Months(l.Card.ShelfLife.Value)
	}
	lines := []html{el("span", a("class", "wayname"), txt(name)), el("b", nil, txt(choiceWords(l, w.Buys)))}
	if price != "" {
		lines = append(lines, el("span", nil, txt(price)))
	}
	lines = append(lines, el("span", nil, txt(words.ShortIn(words.InJobs(1-float64(w.Buys.Chance))))),
		el("span", nil, txt(words.LeftOver(page.Roughly(w.Buys.Left.InexactFloat64(), l.Scale, s.Plan.Job.Units), s.Worth(w.Buys), keeps))))
	if w.Reserve.Step != nil {
		lines = append(lines, el("span", nil, txt(words.ForRepairs(page.Roughly(l.Scale.From(float64(w.Reserve.Value)), l.Scale, s.Plan.Job.Units)))))
	}
	return el("button", a("class", "way", "type", "button", "id", "way-"+key+"-"+l.Key(), "data-do", "set", "data-path", path, "data-text", key, "aria-pressed", yesNo(isChosen)),
		append(lines, el("small", nil, txt(why)))...)
}

// trade sets what a coat takes against the trade's usual figure for it.
func trade(s *page.State, card *job.Card) html {
	var lines, usual []html
	for _, c := range s.Trade(card) {
		if c.Asks {
			lines = append(lines, verdict(asks, c.Takes, c.Text, ""), action("intended", c.Step, "", words.AsIntended, "quiet"))
			continue
		}
		usual = append(usual, verdict(holds, c.Takes, c.Text, ""))
	}
	lines = append(lines, usual...)
	return join(lines...)
}

// lineFigures is a line's need in every measure that is known of it, what it is
// bought for and what is bought, each with its working.
func lineFigures(s *page.State, l *chance.Line) html {
	id := "order." + l.Key()
	var parts []html
	if l.Grade > 0 {
		parts = append(parts, el("h3", nil, txt(l.Grade.String())))
	}
	parts = append(parts, needFigures(s, l, id)...)
	if l.Confidence != nil {
		shown := func(si float64) string { return page.AmountOf(l.Scale.From(si), l.Scale, s.Plan.Job.Units) }
		parts = append(parts, figure(s, id+".enough", words.Capital(words.EnoughIn(l.Confidence.Chance)), shown(float64(l.Confidence.Enough.Value)), l.Confidence.Enough.Step))
		if l.Confidence.Reserve.Step != nil {
			parts = append(parts, figure(s, id+".reserve", words.SheetKeeps, shown(float64(l.Confidence.Reserve.Value)), l.Confidence.Reserve.Step))
		}
	}
	if taken := takenWords(s, l); taken != "" {
		parts = append(parts, hint(taken))
	}
	if !l.ToBuy.IsZero() && l.Err == nil {
		parts = append(parts, figure(s, id+".bought", words.Capital(words.SheetHero), lineAmount(s, l, l.Bought.Bought), l.Buying()))
		if l.SomePriced {
			parts = append(parts, hint(words.InSomeSizes))
		}
	}
	return join(parts...)
}

// takenWords says how much of what was counted has gone into logged cups.
func takenWords(s *page.State, l *chance.Line) string {
	if l.Taken.IsZero() {
		return ""
	}
	return words.CupsHaveTaken(lineAmount(s, l, l.Taken))
}

func needFigures(s *page.State, l *chance.Line, id string) []html {
	var parts []html
	if l.Mass.Value > 0 {
		parts = append(parts, figure(s, id+".mass", words.SheetPlanned, of(s, l.Mass, unit.Weights), l.Mass.Step))
	}
	if l.Volume.Value > 0 {
		parts = append(parts, figure(s, id+".volume", words.SheetByVolume, of(s, l.Volume, unit.Volumes), l.Volume.Step))
	}
	if len(parts) == 0 {
		parts = append(parts, figure(s, id, words.NeedName, page.Said(l.Need.InexactFloat64(), l.Scale, s.Plan.Job.Units), l.Why()))
	}
	return parts
}

// stockFields is what is in stock of a thing, of an abrasive by grade.
func stockFields(s *page.State, t *page.Thing) html {
	if t.Lines[0].Grade == 0 {
		return el("div", a("class", "form"), stockField(s, t.Lines[0].Card))
	}
	var fields []html
	for _, l := range t.Lines {
		fields = append(fields, gradeStock(s, l.Card, l.Grade.String()))
	}
	return el("div", a("class", "form"), fields...)
}

func gradeStock(s *page.State, c *job.Card, grade string) html {
	return fieldWith(s, job.GradeStock(c.Path, grade), fieldExtras{Default: words.None, Label: words.InStock(grade)})
}

// typedGrades is the grades of an abrasive whose stock was typed.
func typedGrades(s *page.State, c *job.Card) []html {
	var fields []html
	for _, line := range s.Doc().Under(c.Path + ".grade") {
		if grade, isStock := strings.CutSuffix(strings.TrimPrefix(line.Path, c.Path+".grade."), ".stock"); isStock {
			fields = append(fields, gradeStock(s, c, grade))
		}
	}
	return fields
}
