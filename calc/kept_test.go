package calc_test

import (
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/fault"
	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/material"
	"shedreckoner/calc/plan"
	"shedreckoner/calc/schedule"
	"shedreckoner/calc/unit"
	"shedreckoner/calc/working"
)

var keptIn = flag.String("kept", "", "a folder to write the figures of the kept jobs to, as text to compare with another revision's")

// The jobs of testdata/kept/jobs.txt come out as they did: every figure that plan,
// order, calendar, log and bench give out, with what it was made from. That says nothing
// of what is right, which the other tests do; it says that something changed, so that no
// change of a figure goes in unseen. Where one is meant, look at what it changes (write
// the figures with -kept DIR before and after, and compare), then make the digests anew:
// go test ./calc -run KeptJobs -update.
func TestKeptJobsComeOutAsTheyDid(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("..", "testdata", "kept", "jobs.txt"))
	require.NoError(t, err)
	var b strings.Builder
	b.WriteString("# What the jobs of jobs.txt come to, by part: made by go test ./calc -run KeptJobs -update.\n")
	for _, text := range strings.Split(string(raw), "\n== ")[1:] {
		name, lines, _ := strings.Cut(text, "\n")
		for _, part := range comesTo(jobtest.Doc(t, lines), strings.HasPrefix(name, "ready ")) {
			sum := sha256.Sum256([]byte(part.text))
			fmt.Fprintf(&b, "%s | %s | %s\n", name, part.name, hex.EncodeToString(sum[:6]))
			if *keptIn != "" {
				file := filepath.Join(*keptIn, strings.ReplaceAll(name+" "+part.name, " ", "-")+".txt")
				require.NoError(t, os.WriteFile(file, []byte(part.text), 0o644))
			}
		}
	}
	path := filepath.Join("..", "testdata", "kept", "digests.txt")
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(b.String()), 0o644))
	}
	was, err := os.ReadFile(path)
	require.NoError(t, err)
	now := strings.Split(b.String(), "\n")
	before := strings.Split(string(was), "\n")
	for _, line := range now {
		if !slices.Contains(before, line) {
			t.Errorf("comes out another way than it did: %s", line)
		}
	}
	assert.Len(t, before, len(now))
}

// part is what one room gives out for a job, as text.
type part struct{ name, text string }

// comesTo is what a job comes to; with chance, how likely its order is enough too.
func comesTo(d job.Document, withChance bool) (parts []part) {
	p := plan.Make(d)
	now := bench.Now{Hour: 10 * unit.Hour, Date: "2026-06-01"}
	b := bench.Make(&p, now)
	add := func(name string, all ...any) {
		w := figures{pointers: map[uintptr]bool{}}
		for _, v := range all {
			w.write("", reflect.ValueOf(v))
		}
		parts = append(parts, part{name, w.text.String()})
	}
	add("surfaces", p.Surfaces(), p.Area(), p.Kept())
	add("notes", p.Refused(), p.Waiting(), p.Asks(), p.LeftOut())
	add("build-ups", p.Buildups(), p.Removals(), p.Putties(), p.Needs())
	for i := range p.Buildups() {
		built := &p.Buildups()[i]
		budgets := built.Budgets()
		add("budget "+strconv.Itoa(i+1), budgets, built.Needs(), built.AllFindings())
		for j := range budgets {
			add(fmt.Sprintf("budget %d, grades %d", i+1, j+1), budgets[j].Grades())
		}
		for j := range built.Steps {
			s := &built.Steps[j]
			var takes, trade any
			if s.Coat != nil {
				takes, trade, _ = s.CrossCheck()
			}
			add(fmt.Sprintf("step %d.%d", i+1, j+1), s.Tasks(3*unit.SquareMetre), takes, trade, s.Parts())
		}
	}
	bought := chance.OrderOf(&p)
	add("order", bought)
	if withChance {
		s, err := chance.Simulate(&p, bought)
		for err == nil && !s.Step(1e6) {
		}
		if err == nil {
			add("chance", s.Order())
		}
	}
	add("lessons", chance.Learn(&p), chance.LeftInStock(&p.Job))
	for i := range bought.Lines {
		add("order, "+bought.Lines[i].Key(), bought.Lines[i].Why(), bought.Lines[i].Buying(), bought.Lines[i].Waits())
	}
	add("bench", &b)
	add("bench, besides", b.Verdicts(), b.Ways(), b.Offers(), b.CardsToday(), b.Flow(), b.PuttyTakes())
	add("calendar", schedule.Make(&p, schedule.Today{Waiting: b.Air.Waiting, Known: b.Air.Known && b.Air.Err == nil, Day: b.Air.Day, Surface: b.Air.Surface, Hour: now.Hour, Unix: 1_780_308_000}))
	for i := range p.Job.Cups {
		cup := p.Job.Cups[i]
		stuck, err := bench.Stuck(&p, cup.Path, now)
		mass, known := p.PutOn(cup.Path)
		add("cup "+strconv.Itoa(i+1), stuck, err, mass, known)
		for _, f := range job.Faults {
			cup.Fault = f.Key
			add("cup "+strconv.Itoa(i+1)+", "+f.Key, fault.Of(&p, &cup))
		}
	}
	return parts
}

// figures writes all that a room gives out, a line for each value that isn't nothing.
type figures struct {
	text     strings.Builder
	pointers map[uintptr]bool
}

func (w *figures) line(at, value string) { fmt.Fprintf(&w.text, "%s = %s\n", at, value) }

func (w *figures) write(at string, v reflect.Value) {
	if !v.IsValid() || v.IsZero() {
		return
	}
	switch x := v.Interface().(type) {
	case *job.Card:
		w.line(at, "card "+x.Key)
		return
	case *material.Method:
		w.line(at, "method "+x.Key)
		return
	case *working.Step:
		w.step(at, x)
		return
	case error:
		w.line(at, x.Error())
	case fmt.Stringer:
		w.line(at, x.String())
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !w.pointers[v.Pointer()] {
			w.pointers[v.Pointer()] = true
			w.write(at, v.Elem())
		}
	case reflect.Interface:
		w.write(at, v.Elem())
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			w.write(at+"."+strconv.Itoa(i), v.Index(i))
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			w.write(fmt.Sprintf("%s[%v]", at, k), v.MapIndex(k))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && f.Type.Kind() != reflect.Func {
				w.write(at+"."+f.Name, v.Field(i))
			}
		}
	case reflect.Float64:
		w.line(at, strconv.FormatFloat(v.Float(), 'g', 5, 64))
	case reflect.String, reflect.Bool, reflect.Int, reflect.Int64, reflect.Uint8, reflect.Int32:
		w.line(at, fmt.Sprint(v.Interface()))
	}
}

// step writes what a figure was made from: formulas, marks and figures, but for names,
// which are words.
func (w *figures) step(at string, s *working.Step) {
	p := reflect.ValueOf(s).Pointer()
	if s == nil || w.pointers[p] {
		return
	}
	w.pointers[p] = true
	made := s.Mark.String()
	if s.Rule != nil {
		made = s.Rule.Formula
	}
	w.line(at, made+" = "+strconv.FormatFloat(s.Out, 'g', 5, 64))
	for i, from := range s.From {
		w.step(at+"."+strconv.Itoa(i), from)
	}
}
