package page

import (
	"maps"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
)

// What is kept stands in two stores: a quick one, which may lose its last seconds
// with the whole browser, and a durable one, which lags by as much as a disk
// takes. Of each place the newer valid text counts.

// DurableMark stands in the quick store once a durable one was there. It says alone
// where the page went on without it.
const DurableMark = Prefix + "durable"

const alone = "alone"

// Merge gives what was kept, of what the quick and the durable store hold; nil
// for a store that can't be read.
func Merge(quick, durable map[string]string) map[string]string {
	kept := maps.Clone(durable)
	if kept == nil {
		kept = map[string]string{}
	}
	maps.Copy(kept, quick)
	for key, text := range durable {
		if isAwayKey(key) && quick[key] != text && standing(text) > standing(quick[key]) {
			kept[key] = text
		}
	}
	for _, demo := range []bool{false, true} {
		permit := permitKey(demo)
		if quick == nil || durable == nil {
			if quick == nil || quick[DurableMark] != "" {
				delete(kept, permit) // the other may have heard of the catalyst
			}
			continue
		}
		quickest, latest := 0, 0
		for _, key := range copiesOf(demo) {
			in, at := standing(quick[key]), standing(durable[key])
			if at > in {
				kept[key] = durable[key]
			}
			quickest, latest = max(quickest, in), max(latest, at)
		}
		if history := historyKey(demo); latest > quickest && historyRevision(durable[history]) == latest {
			kept[history] = durable[history]
		}
		switch {
		case latest > quickest:
			kept[permit] = durable[permit]
		case latest == quickest && durable[permit] != quick[permit]:
			delete(kept, permit)
		case quickest > latest:
			kept[permit] = quick[permit]
		}
		if quick[DurableMark] == alone { // neither has heard all, if the quick one has lost its last seconds
			delete(kept, permit)
		}
	}
	return kept
}

// standing ranks a text among the copies of a job: its revision; below that what
// can't be read; above it what a newer version of the page has saved.
func standing(text string) int {
	_, revision, err := job.Load(text)
	switch {
	case text == "":
		return -2
	case isNewer(err):
		return 1 << 30
	case err != nil:
		return -1
	}
	return revision
}

func historyRevision(text string) int {
	first, _, _ := strings.Cut(text, "\n")
	revision, err := strconv.Atoi(first)
	if err != nil {
		return -1
	}
	return revision
}
