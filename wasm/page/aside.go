package page

import (
	"slices"
	"strconv"
	"strings"
)

// What can't be read is set aside under a key of its own. A store that is full
// may refuse that: then the spoilt text stays where it was, and that job isn't
// saved until the text has been set aside after all, or saved as a file.

const asidePrefix = Prefix + "aside."

// asideKey gives a key under which nothing was set aside before.
func asideKey(kept map[string]string, key string) string {
	for n := 1; ; n++ {
		aside := asidePrefix + strconv.Itoa(n) + "." + strings.TrimPrefix(key, Prefix)
		if _, taken := kept[aside]; !taken {
			return aside
		}
	}
}

// asideOf undoes asideKey: it gives the key whose text was set aside, and its job.
func asideOf(aside string) (key string, demo, ok bool) {
	_, key, ok = strings.Cut(strings.TrimPrefix(aside, asidePrefix), ".")
	key = Prefix + key
	return key, slices.Contains(copiesOf(true), key), ok && strings.HasPrefix(aside, asidePrefix)
}

// unstuck hears that it was set aside after all. The place where it stood is
// free, and once all are, what was changed meanwhile is kept.
func unstuck(s *State, aside string) []Effect {
	key, demo, _ := asideOf(aside)
	slot := s.slot(demo)
	left := slices.DeleteFunc(slices.Clone(slot.Stuck), func(e Effect) bool { return e.Key == aside })
	if len(left) == len(slot.Stuck) {
		return nil
	}
	slot.Stuck = left
	effects := []Effect{{Kind: Revoke, Key: key}}
	if len(left) > 0 {
		return effects
	}
	more := savesOf(s, demo)
	return append(effects, more...)
}

// offerAside offers what was set aside as a file, so that somebody may yet read
// it. From then on it no longer blocks saves.
func offerAside(s *State, m Message) []Effect {
	if len(s.Aside) == 0 {
		return nil
	}
	effects := []Effect{{Kind: Download, Key: "shed-reckoner-set-aside.txt", Text: strings.Join(s.Aside, "\n\n")}}
	for _, demo := range []bool{false, true} {
		if slot := s.slot(demo); len(slot.Stuck) > 0 {
			var more []Effect
			slot.Stuck = nil
			more = savesOf(s, demo)
			effects = append(effects, more...)
		}
	}
	return effects
}
