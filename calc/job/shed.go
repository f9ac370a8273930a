package job

import (
	"slices"
	"strings"

	"shedreckoner/calc/unit"
)

// ofShed is what stays when the job changes: a line belongs to the shed if its path
// is one of these or below one. All others are the job's.
var ofShed = []string{
	"card", "test", "removal", "learn", "units", "currency",
	BenchPath + ".tool", BenchPath + ".scale-step", BenchPath + ".syringe-step", BenchPath + ".drops", BenchPath + ".mark",
	BenchPath + ".mixing", BenchPath + ".agency", BenchPath + ".flow-cup",
	DayPath + ".low", DayPath + ".high", DayPath + ".sunrise", DayPath + ".read-temp", DayPath + ".read-humidity", DayPath + ".read-at",
	DayPath + ".date", DayPath + ".work-from", DayPath + ".work-to",
}

// The paths of the number under which a job is put away, and of the day on which it
// was last worked on. A file or a link that comes in keeps neither.
const (
	NumberPath = "kept.number"
	WorkedPath = "kept.worked"
)

// MaxJobs is how many jobs are kept.
const MaxJobs = 50

// IsShed says if the line at the path stays when the job changes.
func IsShed(path string) bool {
	path = strings.TrimPrefix(path, real)
	return slices.ContainsFunc(ofShed, func(own string) bool { return IsAtOrUnder(path, own) })
}

// IsAtOrUnder says if a path is top or lies below it.
func IsAtOrUnder(path, top string) bool {
	rest, found := strings.CutPrefix(path, top)
	return found && (rest == "" || rest[0] == '.')
}

// SplitShed splits a document into the shed and the job. No line is in both, and
// none is lost: Join puts them together again.
func SplitShed(d Document) (shed, rest Document) {
	for _, l := range d.lines {
		if IsShed(l.Path) {
			shed.lines = append(shed.lines, l)
		} else {
			rest.lines = append(rest.lines, l)
		}
	}
	return shed, rest
}

// Join puts a shed and a job together. Where both have a line, the job's counts.
func Join(shed, rest Document) Document { return Of(slices.Concat(shed.lines, rest.lines)) }

// without leaves out every line at or below the paths.
func (d Document) without(paths ...string) Document {
	return Document{slices.DeleteFunc(slices.Clone(d.lines), func(l Line) bool {
		path := strings.TrimPrefix(l.Path, real)
		return slices.ContainsFunc(paths, func(top string) bool { return IsAtOrUnder(path, top) })
	})}
}

// PutAway is the job without the shed. It keeps the units in which its bare numbers
// are meant: the shed's may be different by the time it is taken up.
func PutAway(d Document) Document {
	shed, rest := SplitShed(d)
	return Join(Document{shed.At("units")}, rest)
}

// TakeUp puts a job that was put away into a shed, in the shed's units.
func TakeUp(shed, away Document) Document {
	_, rest := SplitShed(inUnits(away, ReadUnits(shed)))
	return Join(shed, rest)
}

// inUnits gives the same document in other units: bare numbers get the old unit
// written after them.
func inUnits(d Document, to Units) Document {
	for _, m := range unit.Choosable {
		d = SetUnit(d, m, to.Scale(m))
	}
	return SetComma(d, to.Comma)
}

// Repeat is a job to be done again: what was planned for it, and nothing of what
// was read, mixed, bought or done.
func Repeat(away Document) Document {
	d := away.without("cup", "done", "ticked", "bench", "day", "kept")
	return Document{slices.DeleteFunc(d.lines, func(l Line) bool {
		parts := strings.Split(strings.TrimPrefix(l.Path, real), ".")
		return len(parts) > 4 && parts[0] == "buildup" && (parts[4] == combs.Key || parts[4] == witnesses.Key)
	})}
}

// IsBlank says if nothing of a job was typed yet.
func IsBlank(d Document) bool {
	_, rest := SplitShed(d)
	return len(rest.without("kept").lines) == 0
}

// RetireCard notes that the id of one of the builder's cards was used: a job that
// was put away may still refer to it, and must not find a different material there.
func RetireCard(d Document, card string) Document { return d.Set(card+".gone", "yes") }
