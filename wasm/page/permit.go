package page

import (
	"slices"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// A weighed cup is given its dose after a reload only by a permit that is kept
// beside the job: put there when it is weighed, taken away before anything else
// when its catalyst goes in. Taking away needs no room, so it works where a full
// store refuses the save, and it outlives a save that is damaged later: an older
// copy of the job can't give the dose a second time.

func permitKey(demo bool) string {
	if demo {
		return Prefix + "demo.permit"
	}
	return Prefix + "job.permit"
}

// permit names the one weighed cup that may still be dosed.
func permit(d job.Document, cup string) string { return cup + " " + d.Get(cup+".weighed") }

// keepPermit lets the cup be dosed after a reload too.
func keepPermit(s *State, d job.Document, cup string) Effect {
	return Effect{Kind: Keep, Key: permitKey(s.InDemo), Text: permit(d, cup)}
}

// dropPermit ends that.
func dropPermit(s *State) Effect { return Effect{Kind: Revoke, Key: permitKey(s.InDemo)} }

// permitted ends every weighed cup without a permit: its catalyst may be in.
// Running clocks go on.
func permitted(d job.Document, kept string) job.Document {
	for _, cup := range OpenCups(d, Weighed) {
		if permit(d, cup) != kept {
			d = undosed(d, cup)
		}
	}
	return d
}

// undosed ends a weighed cup whose catalyst may be in.
func undosed(d job.Document, cup string) job.Document {
	return d.Set(cup+".ended", "0").Set(cup+".end", words.CatalystMayBeIn)
}

// LastMayHaveCatalyst reports whether nobody knows whether the catalyst of the cup that
// was weighed last is in.
func (s *State) LastMayHaveCatalyst() bool {
	ids := s.Doc().Items("cup")
	return len(ids) > 0 && s.Doc().Get("cup."+ids[len(ids)-1]+".end") == words.CatalystMayBeIn
}

// NextWaits reports whether no dose of the next cup is shown until it is asked for:
// beside a cup that had its own, or may have had.
func (s *State) NextWaits() bool {
	return (len(OpenCups(s.Doc(), Running)) > 0 || s.LastMayHaveCatalyst()) && !slices.Contains(s.Sheets, NextCup)
}

// besideOther ends every weighed cup that another tab has taken further.
func besideOther(mine, theirs job.Document) job.Document {
	for _, cup := range OpenCups(mine, Weighed) {
		if CupPhase(theirs, cup) != Weighed {
			mine = undosed(mine, cup)
		}
	}
	return mine
}
