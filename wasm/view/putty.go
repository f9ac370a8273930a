package view

import (
	"strconv"

	"shedreckoner/calc/job"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// putties is the fillers mixed by hand.
func putties(s *page.State) html {
	ids := s.Doc().Items("putty")
	var items []html
	for i, id := range ids {
		items = append(items, puttyItem(s, "putty."+id, i, len(ids)))
	}
	return join(el("p", a("class", "rowsname"), txt(words.HandMixedTitle)),
		region("list-putty", "div", a("class", "list", "tabindex", "-1"), items...),
		action("add", "putty", "", words.AddAPutty, "quiet"))
}

func puttyOptions(s *page.State) []job.Option {
	options := []job.Option{}
	for _, id := range s.Doc().Items("putty") {
		path := "putty." + id
		options = append(options, job.Option{Key: path, Name: puttyName(s, path)})
	}
	return options
}

// puttyChosen is the filler that a step has: one mixed by hand, or the one of its card.
func puttyChosen(s *page.State, at string) string {
	if path := s.Doc().Get(at); path != "" {
		return puttyName(s, path)
	}
	return words.BoughtFiller
}

func puttyName(s *page.State, path string) string {
	if name := s.Doc().Get(path + ".name"); name != "" {
		return name
	}
	return words.PuttyWithoutAName
}

func plannedPutty(s *page.State, path string) plan.Putty {
	for _, p := range s.Plan.Putties() {
		if p.Path == path {
			return p
		}
	}
	return plan.Putty{}
}

func puttyItem(s *page.State, path string, at, count int) html {
	open := s.IsOpen(path)
	p := plannedPutty(s, path)
	parts := []html{itemLine(path, open, puttyName(s, path), of(s, p.Made.Density, unit.Densities))}
	if open {
		parts = append(parts, el("div", a("class", "form"),
			field(s, path+".name"), puttyParts(s, path),
			fieldWith(s, path+".air", fieldExtras{Default: "0"}),
			fieldWith(s, path+".wanted", fieldExtras{Default: words.WhatThePartsMake}),
			fieldWith(s, path+".against", fieldExtras{Options: cardOptions(s, "fill"), First: words.EpoxyFairingFiller}),
			region("figures-"+path, "div", a("class", "figures"), puttyFigures(s, path, p))),
			itemTools(path, at, count))
	}
	return region("item-"+path, "article", a("class", "item", "data-open", yesNo(open)), parts...)
}

// puttyParts is what goes into the bucket.
func puttyParts(s *page.State, path string) html {
	list := path + ".part"
	var rows []html
	for i, id := range s.Doc().Items(list) {
		row := list + "." + id
		kind := material.FindPuttyPart(s.Doc().Get(row + ".what"))
		cells := []html{el("p", a("class", "rowname"), txt(words.PartNumber(i+1))), field(s, row+".what"), field(s, row+".by")}
		for _, key := range job.PuttyPartFields(s.Doc().Get(row + ".by")) {
			cells = append(cells, puttyField(s, row, key, kind))
		}
		cells = append(cells, action("remove", row, "", words.Remove, "quiet"))
		rows = append(rows, region(row, "div", a("class", "row", "tabindex", "-1"), cells...))
	}
	return region("list-"+list, "div", a("class", "rows", "tabindex", "-1"),
		el("p", a("class", "rowsname"), txt(words.WhatGoesIn)),
		el("p", a("class", "hint"), txt(words.WhatDensities)), sayRegion(list, saidOf(s, list)), join(rows...), action("add", list, "", words.AddAPart, "quiet"))
}

func puttyField(s *page.State, row, key string, kind *material.PuttyPart) html {
	scale := s.Plan.Job.Units.Scale(unit.Densities)
	switch key {
	case "true":
		return fieldWith(s, row+".true", fieldExtras{Default: unit.Number(scale.From(float64(kind.True.Value)), 3)})
	case "bulk":
		return fieldWith(s, row+".bulk", fieldExtras{Default: unit.Number(scale.From(float64(kind.Bulk.Value)), 3)})
	case "price":
		return fieldWith(s, row+".price", fieldExtras{Default: words.NoPrice})
	}
	return field(s, row+"."+key)
}

func puttyFigures(s *page.State, path string, p plan.Putty) html {
	if !p.Known {
		return waits(s, path)
	}
	parts := []html{
		figure(s, path+".volume", words.ThePartsMake, of(s, p.Made.Volume, unit.Volumes), p.Made.Volume.Step),
		figure(s, path+".mass", words.AndWeigh, of(s, p.Made.Mass, unit.Weights), p.Made.Mass.Step),
		figure(s, path+".density", words.DensityOfThePutty, of(s, p.Made.Density, unit.Densities), p.Made.Density.Step),
		figure(s, path+".balloons", words.BalloonsByVolume, unit.Write(float64(p.Made.Balloons.Value), unit.InPercent, 3), p.Made.Balloons.Step),
	}
	if p.Made.IsDry() {
		parts = append(parts, el("p", a("class", "ask"), txt(words.DryPutty)))
	}
	for i, part := range p.Parts {
		id := path + ".part." + strconv.Itoa(i)
		if part.Weigh.Step != nil {
			parts = append(parts, figure(s, id+".weigh", words.WeighPart(part.Name), of(s, part.Weigh, unit.CupWeights), part.Weigh.Step))
		} else {
			parts = append(parts, figure(s, id+".mass", words.PartWeighs(part.Name), of(s, part.Mass, unit.CupWeights), part.Mass.Step))
		}
	}
	return join(join(parts...), puttyAgainst(s, p))
}

// puttyAgainst compares the putty with a bought filler.
func puttyAgainst(s *page.State, p plan.Putty) html {
	scale := s.Plan.Job.Units.Scale(unit.Densities)
	bought := float64(p.Against.Density.Value)
	weight := words.PuttyAgainst(unit.Write(float64(p.Made.Density.Value), scale, 3), p.Against.Name, unit.Write(bought, scale, 3))
	cost := words.PriceThem(p.Against.Name)
	switch {
	case p.Cost.Valid && p.Bought.Valid:
		cost = words.LitreAgainst(page.Money(p.Cost.Decimal.StringFixed(2), s), p.Against.Name, page.Money(p.Bought.Decimal.StringFixed(2), s))
	case p.Cost.Valid:
		cost = words.LitreAlone(page.Money(p.Cost.Decimal.StringFixed(2), s), p.Against.Name)
	}
	return join(el("p", a("class", "hint"), txt(weight)), el("p", a("class", "hint"), txt(cost)))
}
