package main

import (
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strconv"

	"shedreckoner/site/webdriver"
	"shedreckoner/wasm/markup"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

const (
	fewMessages  = 1000
	mostMessages = 10 * fewMessages
	heapLimit    = 1.1 // times the live heap after the few
)

// script is a builder's round through the made-up job, again and again. What is typed has the number of the message in it,
// so that each changes something.
var script = []page.Message{
	{Verb: "go", Path: "surfaces"}, {Verb: "open", Path: "surface.1"}, {Verb: "set", Path: "surface.1.length", Text: " mm"},
	{Verb: "set", Path: "surface.1.name", Text: " Foredeck"}, {Verb: "add", Path: "surface.1.cutout"}, {Verb: "undo"}, {Verb: "open", Path: "surface.1"},
	{Verb: "go", Path: "buildup"}, {Verb: "open", Path: "buildup.1"}, {Verb: "set", Path: "buildup.1.name", Text: " Deck"}, {Verb: "open", Path: "buildup.1"},
	{Verb: "go", Path: "cup"}, {Verb: "set", Path: "bench.now.amount", Text: " g"}, {Verb: "set", Path: "bench.now.surface-temp", Text: "x"}, {Verb: "undo"},
	{Verb: "go", Path: "order"}, {Verb: "why", Path: "order.gelcoat.mass"}, {Verb: "why", Path: "order.gelcoat.mass"}, {Verb: "go", Path: "log"}, {Verb: "undo"},
}

// scripted is the message with the number.
func scripted(n int) page.Message {
	m := script[n%len(script)]
	if m.Verb == "set" {
		m.Text = strconv.Itoa(1000+n%900) + m.Text
	}
	return m
}

// heap prints how much more is alive after the most messages than after the few. Everything alive is the page's: what it
// typed, undid and showed.
func heap() error {
	s, _ := page.Start(nil, page.Moment{Date: "2026-05-01"})
	s, _ = page.Update(s, page.Message{Verb: "demo", At: s.Now})
	shown, few := new(markup.Page), 0.
	for n := range mostMessages {
		m := scripted(n)
		m.At = s.Now
		s, _ = page.Update(s, m)
		shown = shown.Next(view.Page(s))
		if n+1 == fewMessages {
			few = alive()
		}
	}
	most := alive()
	runtime.KeepAlive(s)
	runtime.KeepAlive(shown)
	fmt.Printf("heap/%d %.0f bytes -\nheap/%d %.0f bytes -\n", fewMessages, few, mostMessages, most)
	return figure("heap", most/few, "×"+strconv.Itoa(fewMessages)+" messages", heapLimit)
}

// alive is the bytes of the live heap.
func alive() float64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC() // what the first only unlinks, the second frees
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc)
}

// functions prints how many js.Func more the page holds after the most messages than after the few.
func (b bench) functions(page string) error {
	s := b.demo(page)
	defer s.Quit()
	say(s, 0, fewMessages)
	few := countFunctions(s)
	if few < 2 {
		return errors.New("functions: none of Go's was found")
	}
	say(s, fewMessages, mostMessages)
	return figure("functions", float64(countFunctions(s)-few), "more than after "+strconv.Itoa(fewMessages)+" messages", 0)
}

// say sends the page the scripted messages from one number to another, some at a time: a script that takes too long is cut
// off.
func say(s *webdriver.Session, from, to int) {
	const atATime = 250
	var list []map[string]string
	for n := from; n < to; n++ {
		m := scripted(n)
		list = append(list, map[string]string{"verb": m.Verb, "path": m.Path, "text": m.Text})
	}
	for some := range slices.Chunk(list, atATime) {
		s.Script(nil, `for (const detail of arguments[0]) window.dispatchEvent(new CustomEvent("shed-answer", { detail }))`, some)
	}
}

// countFunctions counts the functions alive in the page that leave an event for Go, as wasm_exec.js has them do: one is made
// for each js.Func, and one makes them.
func countFunctions(s *webdriver.Session) int {
	var prototype, functions struct {
		Result  struct{ ObjectID string }
		Objects struct{ ObjectID string }
	}
	s.CDP(nil, "HeapProfiler.collectGarbage", map[string]any{})
	s.CDP(&prototype, "Runtime.evaluate", map[string]any{"expression": "Function.prototype"})
	s.CDP(&functions, "Runtime.queryObjects", map[string]any{"prototypeObjectId": prototype.Result.ObjectID})
	var count struct{ Result struct{ Value int } }
	s.CDP(&count, "Runtime.callFunctionOn", map[string]any{
		"objectId": functions.Objects.ObjectID, "functionDeclaration": "function () { return this.filter((f) => typeof f === 'function' && `${f}`.includes('_pendingEvent')).length }", "returnByValue": true})
	return count.Result.Value
}
