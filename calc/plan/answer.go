package plan

import (
	"shedreckoner/calc/job"
)

// A plan is a set of questions. Each is answered when it is first asked, and the
// answer is kept, for this plan and for those that follow it, as long as the
// parts of the job that it looked at are the very same. What it looked at is
// written down while it is worked out, so that nobody has to say anywhere what
// depends on what.

// book keeps the answers of a plan and of those that follow it. Whoever asks one
// of them asks all: plans made one after another belong to one goroutine.
type book struct {
	answers map[string]*answer
	open    []*answer // being worked out, the innermost last
}

// answer is what was worked out to a question.
type answer struct {
	question string
	value    any
	notes    notes
	parts    []seen    // of the reading
	asked    []*answer // the other questions that it needed
	of       *job.Mark // of the reading for which it is known to hold
	work     func(*maker) any
	isSmall  bool // its value can be compared
}

// notes is what there is to say beside an answer.
type notes struct {
	refused []job.Problem // wrong as typed
	waiting []job.Problem // yet to be typed
	asks    []Ask         // taken, but unlikely
}

// seen is a part of the reading, as it was when it was looked at.
type seen struct {
	path string
	was  any
}

// mostAnswers is how many answers are kept before all are dropped: a job that
// was changed that often has left many behind.
const mostAnswers = 20_000

// ask gives the answer to a question. What work looks at it must reach through
// the maker, which writes it down.
func ask[T any](p *Plan, question string, work func(*maker) T) T {
	a := p.answerTo(question, false, func(m *maker) any { return work(m) })
	p.book.asked(a)
	return a.value.(T)
}

// askSmall is ask for a value that can be compared. An answer that needed it
// stays right while it comes out the same, whatever it is made from. The question
// must say all that work needs to know.
func askSmall[T comparable](p *Plan, question string, work func(*maker) T) T {
	a := p.answerTo(question, true, func(m *maker) any { return work(m) })
	p.book.asked(a)
	return a.value.(T)
}

// asked notes that what is being worked out has needed an answer.
func (b *book) asked(a *answer) {
	if n := len(b.open); n > 0 {
		b.open[n-1].asked = append(b.open[n-1].asked, a)
	}
}

func (p *Plan) answerTo(question string, isSmall bool, work func(*maker) any) *answer {
	b := p.book
	if a := b.answers[question]; a != nil && p.isRight(a) {
		return a
	}
	a := &answer{question: question, work: work, isSmall: isSmall, of: p.reading.Mark}
	b.open = append(b.open, a)
	defer func() { b.open = b.open[:len(b.open)-1] }()
	a.value = work(&maker{plan: p, answer: a})
	b.answers[question] = a
	return a
}

// isRight says if an answer holds for this plan too.
func (p *Plan) isRight(a *answer) bool {
	if a.of == p.reading.Mark {
		return true
	}
	for _, s := range a.parts {
		if !p.reading.Keeps(a.of, s.path) && p.reading.Part(s.path) != s.was {
			return false
		}
	}
	for i, b := range a.asked {
		if p.isRight(b) {
			continue
		}
		if !b.isSmall {
			return false
		}
		again := p.answerTo(b.question, true, b.work)
		if again.value != b.value {
			return false
		}
		a.asked[i] = again
	}
	a.of = p.reading.Mark
	return true
}

func (n *notes) isEmpty() bool { return len(n.refused)+len(n.waiting)+len(n.asks) == 0 }

// notesOf gives what there is to say of an answer, once it is asked for.
func (b *book) notesOf(question string) []*notes {
	if a := b.answers[question]; a != nil && !a.notes.isEmpty() {
		return []*notes{&a.notes}
	}
	return nil
}

// maker works out one answer.
type maker struct {
	plan   *Plan
	answer *answer
	below  []Step     // the steps before the one that is planned
	above  []job.Step // the steps after it
}

// look notes that the answer depends on a part of the reading: what lies at and
// under "surface.3", "buildup.2", "card.gelcoat", "shop.gelcoat", "bench", and so on; or, of
// "surface", "buildup" and "card", the order of their items.
func (m *maker) look(part string) {
	parts := m.answer.parts
	for _, s := range parts[:min(len(parts), 8)] { // one that is looked at often was among the first
		if s.path == part {
			return
		}
	}
	m.answer.parts = append(parts, seen{part, m.plan.reading.Part(part)})
}

// job is the job as it was read, for an answer that depends on the parts named.
func (m *maker) job(parts ...string) *job.Job {
	for _, part := range parts {
		m.look(part)
	}
	return &m.plan.Job
}

// cards is every card.
func (m *maker) cards() []*job.Card {
	m.look("card")
	return m.job(m.plan.reading.CardParts()...).Cards
}

// card finds a card by its key; nil: there is none.
func (m *maker) card(key string) *job.Card { return m.job("card." + key).CardByKey(key) }

// shop finds how a card's material is bought; nil: there is no such card.
func (m *maker) shop(key string) *job.Shop { return m.job(job.ShopPart(key)).ShopByKey(key) }

// surfaces is the surfaces as they were typed, in their order; what they say
// isn't looked at yet.
func (m *maker) surfaces() []*job.Surface { return m.job("surface").Surfaces }

func (m *maker) refuse(path string, err error) {
	n := &m.answer.notes
	n.refused = append(n.refused, job.Problem{Path: path, Err: err})
}

func (m *maker) wait(path string, err error) {
	n := &m.answer.notes
	n.waiting = append(n.waiting, job.Problem{Path: path, Err: err})
}

// isRefused says if the text at a path can't be read, or was refused by this
// answer.
func (m *maker) isRefused(path string) bool {
	m.look(job.PartOf(path))
	return at(m.answer.notes.refused, path) != nil || at(m.plan.reading.Problems, path) != nil
}

// ask asks about a value outside its band, unless the builder has said that it
// is real: what is typed at the path, or the value where nothing is typed there
// but computed.
func (m *maker) ask(path string, b *Band, value float64) {
	m.look(job.PartOf(path))
	if ask, isAsked := m.plan.Question(path, b, value); isAsked {
		m.answer.notes.asks = append(m.answer.notes.asks, ask)
	}
}
