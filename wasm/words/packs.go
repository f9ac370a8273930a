package words

import (
	"strconv"
	"strings"

	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/unit"
)

// Packs writes packs as a shop reads them, "2 × 5 kg, 1 × 1 kg": a line
// breaks only between packs.
func Packs(line chance.Line) string {
	var list []string
	for _, p := range line.Packs {
		scale := p.Size.Scale
		if scale == unit.NoScale {
			scale = line.Scale
		}
		size := unit.WithUnit(unit.Group(p.Size.Amount.String()), scale)
		if si := scale.SI(p.Size.Amount.InexactFloat64()); unit.Handy(si, scale) != scale {
			size = unit.Write(si, unit.Handy(si, scale), 6)
		}
		switch {
		case scale == unit.InPure && p.Size.Amount.String() == "1":
			list = append(list, strings.ReplaceAll(Counted(p.Count, "piece", "pieces"), " ", "\u00a0"))
			continue
		case scale == unit.InPure:
			size = packOf + size
		}
		list = append(list, strconv.Itoa(p.Count)+"\u00a0×\u00a0"+size)
	}
	return strings.Join(list, ", ")
}

// Buy says what to buy of a line, or why that can't be said.
func Buy(l *chance.Line, units job.Units) string {
	switch {
	case l.Err != nil:
		return Sentence(l.Err, nil, units)
	case l.ToBuy.IsZero():
		return NothingToBuy
	}
	return Packs(*l)
}

// OrderTitle is the heading of a job's list that leaves the page.
func OrderTitle(job string) string {
	if job == "" {
		return OrderList
	}
	return OrderList + ": " + job
}

// GradePacks names the grade of an abrasive before its packs.
func GradePacks(l *chance.Line, packs string) string {
	if l.Grade == 0 {
		return packs
	}
	return l.Grade.String() + ":\u00a0" + strings.ReplaceAll(packs, packOf, "")
}

const packOf = "pack of "
