// Package page is the page without a browser: its state, the messages that
// change it, and what the border is to do besides. It knows no markup and no
// syscall/js; time comes only with a message.
package page

import (
	"strings"

	"shedreckoner/calc/bench"
	"shedreckoner/calc/chance"
	"shedreckoner/calc/job"
	"shedreckoner/calc/plan"
)

// Screen is one of the five screens, or a page beside them.
type Screen struct{ Key, Name string }

// Screens is the five screens in the order of the work, then what lies beside.
var Screens = []Screen{
	{"surfaces", "Surfaces"}, {"buildup", "Build-up"}, {"cup", "Cup"}, {"order", "Order"}, {"log", "Log"},
	{"cards", "Cards"}, {"settings", "Settings"}, {"sources", "Sources"},
}

// MainScreens is how many of Screens stand in the bar.
const MainScreens = 5

// State is all that the page knows. An update works on a copy: what it points to
// is never changed in place.
type State struct {
	Slots
	Sight

	Comma   bool   // the phone writes decimals with a comma
	Version string // of the page, as it was packed
	Look    string // "", "light" or "dark": the system's setting, or the builder's

	Plan plan.Plan // of the shown job as it is typed: its problems stand beside the fields

	Confidence Confidence // of the plan's order
	Working    bool       // a slice of work was asked for and hasn't come yet

	Now    Moment           // of the latest message
	Warned map[string]int   // by running cup and its start: how far it has warned
	moved  map[string]moved // by the same: by how much the phone's clock was set while it ran

	Spoken string            // the dose that was read out last, or is to be
	Away   map[string]string // the jobs that are put away, as they are kept, by key
	before *changed          // what the latest change of jobs put away

	Notice string   // one thing to tell, until the builder's next message
	Stored bool     // the last save was taken
	Behind bool     // the durable store can't be read yet: it may hold something newer
	Aside  []string // saved texts that could not be read and were set aside

	Persistent bool     // the browser was asked to keep what is stored
	Pending    *Pending // a job that came in and waits for the builder's word
	Newer      bool     // a newer version of the page is kept and waits
	Offline    string   // "yes" or "no": whether the page is kept for use without a network; "" while that isn't known
	Audible    bool     // the browser lets the page sound: none does before the first touch
	MaySleep   bool     // the phone doesn't let the page keep the screen awake
	Unsettled  bool     // the disk may not have the catalyst of a cup yet
}

// Bench gives the next cup, by what is typed and by the minute: readings grow old,
// an evening comes. No dose rests on what was replaced.
func (s *State) Bench() *bench.Bench {
	return plan.Once(&s.Plan, "bench", s.Now.minute(), func(p *plan.Plan) *bench.Bench {
		b := bench.Make(p, s.BenchNow())
		return &b
	})
}

// Chosen gives what the next cup is mixed of, and for what.
func (s *State) Chosen() *bench.Chosen {
	return plan.Once(&s.Plan, "chosen", 0, func(p *plan.Plan) *bench.Chosen {
		c := bench.Choose(p)
		return &c
	})
}

// Order gives what to buy: as planned, or once that is known for the chance that
// each card wants.
func (s *State) Order() *chance.Order {
	if s.Confidence.order != nil {
		return s.Confidence.order
	}
	return plan.Once(&s.Plan, "order", 0, func(p *plan.Plan) *chance.Order {
		o := chance.OrderOf(p)
		return &o
	})
}

// Lessons gives what the log teaches.
func (s *State) Lessons() *chance.Lessons {
	return plan.Once(&s.Plan, "lessons", 0, func(p *plan.Plan) *chance.Lessons {
		l := chance.Learn(p)
		return &l
	})
}

// Refused is what the notice tells of. Where surfaces are measured it is what can't
// be read: what follows from them further on isn't worked out for it.
func (s *State) Refused() []job.Problem {
	if s.Screen == "surfaces" {
		return s.Plan.Unreadable()
	}
	return s.Plan.Refused()
}

// AskAt gives the question about the figure at the path; nil: none.
func (s *State) AskAt(path string) *plan.Ask {
	ask := s.Plan.AskAt(path)
	if list, _, _ := strings.Cut(path, "."); ask == nil && (list == "cup" || list == "done") {
		return s.Lessons().AskAt(path)
	}
	return ask
}

// Message is something that happened: a verb, a path and a text.
type Message struct {
	Verb, Path, Text string
	At               Moment
}

// Effect is something for the border to do.
type Effect struct {
	Kind EffectKind
	Key  string // of what is kept; a file's name; an element's id
	Text string
	made *func() string // makes the Text of Keep, where that takes long

	IfKept bool // Keep only where the latest that was to be kept was
}

// Kept gives the text that Keep keeps. A job's is made only now: the answer to
// a key doesn't wait for it.
func (e Effect) Kept() string {
	if e.made != nil {
		return (*e.made)()
	}
	return e.Text
}

// EffectKind is what an effect does.
type EffectKind int

// The effects.
const (
	Keep      EffectKind = iota // keep what Kept gives under Key in the browser's store; answered by "kept" or "refused"
	Forget                      // drop Key from the store
	Revoke                      // drop Key from the store, whatever else the store refuses
	Settle                      // show this step only once what it keeps and drops is on the disk, where the browser can tell
	Download                    // offer Text as a file named Key
	Copy                        // put Text on the clipboard
	Share                       // hand Text to the phone's share sheet
	ShareLink                   // the same with this page's address, Text as its fragment
	PickFile                    // ask for a file; answered by "import"
	Print                       // print the page; Key: only what is meant for this paper
	Focus                       // put the focus on the element with the id Key
	Say                         // read Text out to those who listen rather than look: at once, or once it has Settled
	Theme                       // show the look Key
	Timer                       // "on": a tick every second; "off"
	Awake                       // "on": keep the screen awake; answered by "awake" or "may-sleep"; "off"
	Sound                       // sound the alarm of stage Key
	Vibrate                     // vibrate for stage Key
	Persist                     // ask the browser to keep what is stored
	Switch                      // go to the newer version of the page
	Later                       // come back once what waits is done; answered by "work"
)
