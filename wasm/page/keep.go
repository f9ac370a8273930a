package page

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// Prefix is before every key that the page keeps: pages opened from a phone's
// storage share one store with all others.
const Prefix = "shedreckoner."

const viewKey = Prefix + "view"

// copies are the two places of a job: a save goes to the one that holds the
// older revision, so that a save cut short never costs both.
func copies(demo bool) [2]string {
	if demo {
		return [2]string{Prefix + "demo.a", Prefix + "demo.b"}
	}
	return [2]string{Prefix + "job.a", Prefix + "job.b"}
}

func keepJob(s *State) Effect {
	slot := s.Slot()
	doc, revision := slot.Doc, slot.Revision
	made := func() string { return job.Save(doc, revision) }
	return Effect{Kind: Keep, Key: copies(s.InDemo)[slot.place()], made: &made}
}

// savesOf keeps a job, and what can be undone of it.
func savesOf(s *State, demo bool) []Effect {
	shown := s.InDemo
	s.InDemo = demo
	s.Slot().Revision++
	effects := []Effect{keepJob(s), keepHistory(s)}
	s.InDemo = shown
	return effects
}

// place is where the slot's revision goes.
func (slot *Slot) place() int {
	if slot.Swapped {
		return 1 - slot.Revision%2
	}
	return slot.Revision % 2
}

// keepView keeps what isn't part of a job: the screen and the look.
func keepView(s *State) Effect {
	lines := "screen = " + s.Screen + "\nlook = " + s.Look + "\n"
	if s.InDemo {
		lines += "demo = yes\n"
	}
	return Effect{Kind: Keep, Key: viewKey, Text: lines}
}

// Start makes the first state from what was kept, by key. What can't be read
// is set aside under a key of its own, never overwritten.
func Start(kept map[string]string, now Moment) (*State, []Effect) {
	s := &State{Sight: Sight{Screen: Screens[0].Key}, Stored: true, Now: now}
	var effects []Effect
	s.Own, effects = load(kept, copies(false), effects)
	s.Demo, effects = load(kept, copies(true), effects)
	s.Own.Doc, s.Demo.Doc = permitted(s.Own.Doc, kept[permitKey(false)]), permitted(s.Demo.Doc, kept[permitKey(true)])
	for _, e := range effects {
		if e.Kind == Keep {
			s.Aside = append(s.Aside, e.Text)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(kept)) {
		if strings.HasPrefix(key, asidePrefix) {
			s.Aside = append(s.Aside, kept[key])
		}
		if isAwayKey(key) && kept[key] != "" {
			heardAway(s, key, kept[key])
		}
	}
	s.Own, s.Demo = loadHistory(s.Own, kept[historyKey(false)]), loadHistory(s.Demo, kept[historyKey(true)])
	for _, line := range strings.Split(kept[viewKey], "\n") {
		key, value, _ := strings.Cut(line, " = ")
		switch key {
		case "screen":
			goTo(s, Message{Path: value})
			s.Trail = nil
		case "look":
			s.Look = value
		case "demo":
			s.InDemo = s.Demo.Revision > 0
		}
	}
	effects = append(effects, keepView(s), Effect{Kind: Theme, Key: s.Look}) // keeping tells at once if the browser keeps anything
	planAnew(s)
	resumed(s)
	return s, untouched(s, confident(s, append(effects, clocksOf(s)...)))
}

// untouched takes out of the effects whatever would change the store, where a
// newer version of the page has kept what stands there.
func untouched(s *State, effects []Effect) []Effect {
	if !s.IsKeptByNewer() {
		return effects
	}
	return slices.DeleteFunc(effects, func(e Effect) bool { return e.Kind == Keep || e.Kind == Forget || e.Kind == Revoke })
}

// StartAside makes the first state without the jobs that were kept: planning or
// showing them failed because of a bug in this program. They are set aside like
// jobs that can't be read.
func StartAside(kept map[string]string, now Moment) (*State, []Effect) {
	rest := maps.Clone(kept)
	var effects []Effect
	for _, key := range slices.Concat(copiesOf(false), copiesOf(true)) {
		text, found := kept[key]
		if _, _, err := job.Load(text); !found || isNewer(err) {
			continue
		}
		aside := asideKey(rest, key)
		effects = append(effects, Effect{Kind: Keep, Key: aside, Text: text}, Effect{Kind: Forget, Key: key})
		rest[aside] = text
		delete(rest, key)
	}
	s, more := Start(rest, now)
	return s, untouched(s, append(effects, more...))
}

// isNewer reports whether a text was saved by a newer version of the page: its checksum
// fits, so that no flipped digit passes for a format.
func isNewer(err error) bool { return errors.Is(err, job.ErrNewer) && !errors.Is(err, job.ErrDamaged) }

func copiesOf(demo bool) []string { both := copies(demo); return both[:] }

// load reads the newer of two copies that can be read.
func load(kept map[string]string, keys [2]string, effects []Effect) (Slot, []Effect) {
	var best Slot
	for place, key := range keys {
		text, found := kept[key]
		if !found {
			continue
		}
		doc, revision, err := job.Load(text)
		if isNewer(err) {
			return Slot{Ahead: true}, nil
		}
		if err != nil {
			effects = append(effects, Effect{Kind: Keep, Key: asideKey(kept, key), Text: text}, Effect{Kind: Forget, Key: key})
			continue
		}
		if revision > best.Revision {
			best = Slot{Doc: doc, Revision: revision, Swapped: revision%2 != place}
		}
	}
	return best, effects
}

// refused hears that the browser took none of what was to be kept. A history
// alone isn't told of: only what can be undone after a reload depends on it.
func refused(s *State, m Message) []Effect {
	if isAwayKey(m.Path) && s.before != nil {
		return putBack(s)
	}
	if _, demo, isAside := asideOf(m.Path); isAside {
		s.stuck(demo, Effect{Kind: Keep, Key: m.Path, Text: m.Text})
	}
	if m.Path == historyKey(s.InDemo) || !s.Stored {
		return nil
	}
	s.Stored = false
	return []Effect{{Kind: Say, Text: words.NotKept}}
}

// kept hears that the browser took something. Only a job means that it takes
// the next one too: when it is full there is still room for small things.
func kept(s *State, m Message) []Effect {
	if _, _, isAside := asideOf(m.Path); isAside {
		return unstuck(s, m.Path)
	}
	if slices.Contains(copiesOf(s.InDemo), m.Path) {
		s.Stored = !s.IsStuck()
	}
	return nil
}

func export(s *State, m Message) []Effect {
	name := strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' || '0' <= r && r <= '9' {
			return r
		}
		return '-'
	}, strings.ToLower(s.Doc().Get("name")))
	return []Effect{{Kind: Download, Key: strings.Trim("shed-reckoner-"+name, "-") + ".txt", Text: job.Save(s.Doc(), s.Slot().Revision)}}
}

// importFile replaces the shown job by a file's, once all of it has been read;
// undo brings the old one back.
func importFile(s *State, m Message) []Effect {
	doc, _, err := job.Load(asSaved(m.Text))
	if err != nil {
		s.Notice = words.ImportFails(err)
		return nil
	}
	if refusal := refusedLog(doc); refusal != "" {
		s.Notice = refusal
		return nil
	}
	doc = stillCups(straight(doc))
	switch odd := oddLog(doc, s.Now); {
	case hasOpenCup(s.Doc()):
		cupFirst(s, 1)
		return nil
	case isSame(s, doc):
		s.Notice = words.SameJob
		return nil
	case len(odd) > 0:
		s.Pending = &Pending{doc, odd}
		return nil
	}
	return imported(s, doc)
}

// asSaved undoes what other programs do to a text on its way: a byte-order mark,
// their ends of lines, empty lines at the end.
func asSaved(text string) string {
	text = strings.ReplaceAll(strings.TrimPrefix(text, byteOrderMark), "\r\n", "\n")
	text = strings.TrimRight(text, "\n") + "\n"
	if !strings.Contains(text, "\n\n") {
		text += "\n" // a job of no lines
	}
	return text
}
