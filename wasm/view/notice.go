package view

import (
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// notice is what the whole page has to say.
func notice(s *page.State) html {
	var lines []html
	if s.Notice != "" {
		lines = append(lines, el("p", a("class", "note"), txt(s.Notice)))
	}
	if !s.Stored {
		lines = append(lines, el("div", a("class", "ask"), el("p", a("class", "bad"), txt(words.NotStored)), action("export", "", "now", words.ExportJob, "main")))
	}
	if s.IsKeptByNewer() {
		lines = append(lines, el("div", a("class", "ask"), el("p", a("class", "bad"), txt(words.KeptAhead)), action("export", "", "now", words.ExportJob, "quiet")))
	}
	if s.Pending != nil {
		lines = append(lines, pending(s))
	}
	if s.Behind {
		lines = append(lines, el("p", a("class", "note"), txt(words.Behind)))
	}
	if s.Slot().Elsewhere != "" {
		what, theirs := words.ChangedElsewhere, words.ShowTheirs
		if s.Slot().IsLate {
			what, theirs = words.NewerCame, words.ShowNewer
		}
		lines = append(lines, el("div", a("class", "ask"), el("p", nil, txt(what)),
			action("theirs", "", "", theirs, "quiet"), action("mine", "", "", words.KeepMine, "quiet")))
	}
	if len(s.Aside) > 0 {
		text := words.SetAside
		if s.IsStuck() {
			text = words.StuckAside
		}
		lines = append(lines, el("div", a("class", "ask"), el("p", nil, txt(text)), action("aside", "", "", words.SaveAside, "quiet")))
	}
	if s.Newer {
		lines = append(lines, el("div", a("class", "note"), el("p", nil, txt(words.NewVersion)), action("switch", "", "", words.UseItNow, "quiet")))
	}
	if s.InDemo {
		lines = append(lines, el("div", a("class", "demo"), el("strong", a("aria-description", words.MadeUpLong), txt(words.MadeUpJob)),
			action("own", "", "", words.BackToMine, "quiet")))
	}
	if len(s.Refused()) > 0 {
		lines = append(lines, el("div", a("class", "refused"), el("p", nil, txt(words.CantRead)), outOfSight(s)))
	}
	return join(lines...)
}

// outOfSight leads to what is refused where it can't be seen from here.
func outOfSight(s *page.State) html {
	const most = 3
	var ways []html
	for _, r := range s.Refused() {
		if p := s.PlaceOf(r.Path); !s.IsShown(p) && len(ways) < most {
			ways = append(ways, action("find", r.Path, "", words.Capital(p.Name), "quiet"))
		}
	}
	if len(ways) == 0 {
		return nothing
	}
	return join(el("p", nil, txt(words.PutRight)), el("div", a("class", "itemtools"), ways...))
}
