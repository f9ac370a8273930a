package main

import (
	"errors"
	"fmt"
	"slices"
)

// A first visit by a cheap phone on a slow line, as audits of pages take it: processor slowed down, round trips of 150 ms,
// 1.6 Mbit/s down and 0.75 up.
const (
	roundTrip = 150 // ms
	down, up  = 1.6e6 / 8, 0.75e6 / 8

	visited      = 5
	firstLimit   = 1800 // ms until anything is painted: what web.dev calls good
	largestLimit = 2500 // ms until the largest thing is: the same
	stall        = 50   // ms from which on a task holds up a finger
)

// watching notes what is painted, and the tasks that take long.
const watching = `
	globalThis.visit = { First: 0, Largest: 0, Tasks: [] };
	const watch = (type, note) => new PerformanceObserver((list) => list.getEntries().forEach(note)).observe({ type: type, buffered: true });
	watch("paint", (e) => { if (e.name === "first-contentful-paint") visit.First = e.startTime; });
	watch("largest-contentful-paint", (e) => { visit.Largest = e.startTime; });
	watch("longtask", (e) => { visit.Tasks.push(e.duration); });`

// visit is when a page was painted, and its long tasks, in milliseconds.
type visit struct {
	First, Largest float64
	Tasks          []float64
}

// visits prints what a first visit on a slow line takes.
func (b bench) visits(page string) error {
	var first, largest, blocked, longest []float64
	for range visited {
		v := b.visit(page)
		held := 0.0
		for _, task := range v.Tasks {
			held += task - stall
		}
		first, largest = append(first, v.First), append(largest, v.Largest)
		blocked, longest = append(blocked, held), append(longest, slices.Max(append(v.Tasks, 0)))
	}
	fmt.Printf("visit/blocked %s ms -\nvisit/longest-task %s ms -\n", plain(median(blocked)), plain(median(longest)))
	return errors.Join(
		figure("visit/first-paint", median(first), "ms", firstLimit),
		figure("visit/largest-paint", median(largest), "ms", largestLimit))
}

func (b bench) visit(page string) visit {
	s := b.session()
	defer s.Quit()
	slow(s)
	s.CDP(nil, "Network.enable", nil)
	s.CDP(nil, "Network.emulateNetworkConditions", map[string]any{"offline": false, "latency": roundTrip, "downloadThroughput": down, "uploadThroughput": up})
	s.CDP(nil, "Page.addScriptToEvaluateOnNewDocument", map[string]any{"source": watching})
	s.SetSize(360, 740)
	s.Open(page)
	s.Wait(`html[data-ready="yes"]`)
	var v visit
	s.AsyncScript(&v, `const done = arguments[0]; requestAnimationFrame(() => setTimeout(() => done(visit), 500))`)
	return v
}
