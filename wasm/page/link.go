package page

import (
	"encoding/base64"
	"errors"
	"strconv"
	"strings"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/words"
)

// LinkMark stands before a job in the fragment of a link. Its number is that of
// the way in which the job is written: a later page may write another.
const LinkMark = "job=1."

// MaxLink is the longest fragment that is made or read, in bytes. Longer ones
// are cut on their way by some mail and chat programs.
const MaxLink = 64 << 10

// Why a link can't be made or read, besides the errors of job.Load.
var (
	ErrLinkTooLong = errors.New("page: a link would be longer than 64 KiB")
	ErrNoLink      = errors.New("page: no job in this link")
)

// Link writes a job as the fragment of a link. Errors: ErrLinkTooLong.
//
// The saved text is folded and not deflated: the standard library's deflate
// adds 60 kB to what is loaded, its smallest other compressor 24 kB, and a job
// is mostly paths that begin as the one before.
func Link(doc job.Document, revision int) (string, error) {
	text := LinkMark + base64.RawURLEncoding.EncodeToString([]byte(fold(job.Save(doc, revision))))
	if len(text) > MaxLink {
		return "", ErrLinkTooLong
	}
	return text, nil
}

// ReadLink reads a job back. Errors: ErrLinkTooLong, ErrNoLink, and those of
// job.Load.
func ReadLink(fragment string) (job.Document, error) {
	if len(fragment) > MaxLink {
		return job.Document{}, ErrLinkTooLong
	}
	coded, found := strings.CutPrefix(unescaped.Replace(strings.TrimPrefix(fragment, "#")), LinkMark)
	if !found {
		return job.Document{}, noLink(coded)
	}
	folded, err := base64.RawURLEncoding.Strict().DecodeString(coded)
	if err != nil {
		return job.Document{}, job.ErrDamaged
	}
	text, err := unfold(string(folded))
	if err != nil {
		return job.Document{}, err
	}
	doc, _, err := job.Load(text)
	return doc, err
}

// unescaped undoes what some programs make of the mark before a link's job. What
// follows it is letters, digits, - and _, which nothing escapes.
var unescaped = strings.NewReplacer("%3D", "=", "%3d", "=", "%2E", ".", "%2e", ".")

// noLink says why a fragment isn't one that this page made.
func noLink(text string) error {
	if way, found := strings.CutPrefix(text, "job="); found {
		number, _, _ := strings.Cut(way, ".")
		if n, err := strconv.Atoi(number); err == nil && n > 1 {
			return job.ErrNewer
		}
		return job.ErrDamaged
	}
	return ErrNoLink
}

// fold writes for each line how many of its first bytes are those of the line
// before, as one byte, and then the rest.
func fold(text string) string {
	var b strings.Builder
	before := ""
	for line := range strings.Lines(text) {
		same := 0
		for same < min(len(line), len(before), 255) && line[same] == before[same] && line[same] != '\n' {
			same++
		}
		b.WriteByte(byte(same))
		b.WriteString(line[same:])
		before = line
	}
	return b.String()
}

// unfold reads back what fold wrote. It stops once the text is larger than any
// job: a few bytes must not become a flood. Errors: job.ErrDamaged, job.ErrTooLarge.
func unfold(folded string) (string, error) {
	var b strings.Builder
	before := ""
	for len(folded) > 0 {
		same := int(folded[0])
		end := strings.IndexByte(folded[1:], '\n') + 2
		if end < 2 || same > len(before) {
			return "", job.ErrDamaged
		}
		before = before[:same] + folded[1:end]
		folded = folded[end:]
		if b.WriteString(before); b.Len() > job.MaxSaved {
			return "", job.ErrTooLarge
		}
	}
	return b.String(), nil
}

// Pending is a job that came in and waits for the builder's word.
type Pending struct {
	Doc  job.Document
	Asks []string // what there is to say about it, one sentence each
}

// shareLink hands the job to the phone's share sheet as a link.
func shareLink(s *State, m Message) []Effect {
	text, err := Link(job.Portable(s.Doc()), s.Slot().Revision)
	if err != nil {
		s.Notice = words.TooLargeForLink
		return nil
	}
	return []Effect{{Kind: ShareLink, Key: s.Doc().Get("name"), Text: text}}
}

// openLink reads the job in a link that was opened. Nothing is replaced until
// the builder says so.
func openLink(s *State, m Message) []Effect {
	doc, err := ReadLink(m.Text)
	switch {
	case strings.TrimPrefix(m.Text, "#") == PartsSheet:
		s.raise(PartsSheet)
		return nil
	case isAnchor(m.Text):
		return nil
	case errors.Is(err, ErrNoLink):
		s.Notice = words.NotALink
		return nil
	case err != nil:
		s.Notice = words.LinkFails(err, errors.Is(err, ErrLinkTooLong))
		return nil
	}
	if s.InDemo && !hasOpenCup(s.Demo.Doc) {
		own(s, m)
	}
	if refusal := refusedLog(doc); refusal != "" {
		s.Notice = refusal
		return nil
	}
	doc = stillCups(straight(doc))
	if isSame(s, doc) {
		s.Notice = words.SameJob
		return nil
	}
	s.Pending = &Pending{doc, append([]string{words.LinkHolds(doc.Get("name"), len(doc.Items("surface")), len(doc.Items("cup")))}, oddLog(doc, s.Now)...)}
	return nil
}

// isAnchor reports whether a fragment is a place in a page rather than a mangled
// job: a word, short and plain.
func isAnchor(fragment string) bool {
	const longest = 32
	word := strings.TrimPrefix(fragment, "#")
	return len(word) <= longest && !strings.ContainsFunc(word, func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-'
	})
}

// takePending replaces the shown job by the one that waits; undo brings the old
// one back.
func takePending(s *State, m Message) []Effect {
	waits := s.Pending
	if waits == nil {
		return nil
	}
	if hasOpenCup(s.Doc()) {
		cupFirst(s, 1)
		return nil
	}
	s.Pending = nil
	return imported(s, waits.Doc)
}

// dropPending leaves the shown job as it is.
func dropPending(s *State, m Message) []Effect {
	s.Pending = nil
	s.Notice = words.NothingChanged
	return nil
}

// imported takes up a job that was read whole. The one before is put away; where
// nothing was typed yet, the new one replaces it, and undo takes it out again. The
// shed stays as it is.
func imported(s *State, incoming job.Document) []Effect {
	doc, brought, err := job.Into(shedNow(s), incoming)
	switch {
	case err != nil:
		s.Notice = words.ImportFails(err)
		return nil
	case sizeOf(s, doc) > job.MaxSaved:
		s.Notice = words.TooMuchTyped
		return nil
	case s.InDemo || !job.IsBlank(s.Own.Doc):
		if !mayChangeJobs(s) {
			return nil
		}
		return takeUp(s, doc, words.Imported(brought, true))
	}
	effects := changeTo(s, doc.Set(job.NumberPath, s.Own.Doc.Get(job.NumberPath)), "")
	if s.Notice == "" {
		s.Notice = words.Imported(brought, false)
	}
	return effects
}

// isSame reports whether what comes in is the builder's job as it stands here.
func isSame(s *State, incoming job.Document) bool { return job.IsSame(s.Own.Doc, incoming) }

// refusedLog says why the log of a job that comes in can't be; "" where it can.
func refusedLog(doc job.Document) string {
	if list := job.LogProblems(doc); len(list) > 0 {
		return words.LogFails(list[0].Path, doc.Get(list[0].Path))
	}
	return ""
}

// slackAhead is how far a phone's clock may be wrong unasked, in seconds.
const slackAhead = 24 * 3600

// oddLog asks about entries that lie in the future.
func oddLog(doc job.Document, now Moment) []string {
	if ahead := job.Latest(doc) - float64(now.Unix); ahead > slackAhead {
		return []string{words.LogAhead(int(ahead / 86400))}
	}
	return nil
}
