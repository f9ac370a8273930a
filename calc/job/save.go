package job

import (
	"errors"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"
)

// Format is the version of the saved text that this program writes. It reads all
// older ones. In format 1 the text was all that was kept; since format 2 it is one
// job of several, with the shed or with what the job needs of it.
const Format = 2

// MaxSaved is the largest saved text that is read, in bytes.
const MaxSaved = 1 << 20

const title = "shed reckoner job"

// Why a saved text can't be read.
var (
	ErrNotAJob  = errors.New("job: not a saved job")
	ErrNewer    = errors.New("job: saved by a newer version")
	ErrDamaged  = errors.New("job: damaged: the checksum doesn't fit")
	ErrTooLarge = errors.New("job: larger than 1 MiB")
)

// Save gives the document as text: a title, the format, a revision that grows with
// every save, a checksum, and the lines.
func Save(d Document, revision int) string {
	body := make([]byte, 0, bodySize(d)) // once, since this is done at every key press
	for _, l := range d.lines {
		body = append(body, l.Path...)
		body = append(body, between...)
		body = append(body, Escape(l.Text)...)
		body = append(body, end...)
	}
	return head(Format, revision, body) + "\n" + string(body)
}

// SavedSize is how many bytes Save makes of the document.
func SavedSize(d Document, revision int) int {
	return len(counted(Format, revision)) + len("checksum = 00000000\n\n") + bodySize(d)
}

const between, end = " = ", "\n"

func bodySize(d Document) int {
	size := 0
	for _, l := range d.lines {
		size += len(l.Path) + len(between) + len(l.Text) + escaped(l.Text) + len(end)
	}
	return size
}

// escaped is how many characters of a text are written as two.
func escaped(text string) int {
	n := 0
	for _, c := range []byte(text) {
		if c == '\\' || c == '\n' || c == '\r' || c == '\t' {
			n++
		}
	}
	return n
}

// head is what precedes the lines, but for the empty line. The checksum covers
// format and revision too, so that a flipped digit there can't make an old copy
// look like the newer one.
func head(format, revision int, body []byte) string {
	top := counted(format, revision)
	sum := crc32.Update(crc32.ChecksumIEEE([]byte(top)), crc32.IEEETable, body)
	return fmt.Sprintf("%schecksum = %08x\n", top, sum)
}

// counted is what of the head is in the checksum.
func counted(format, revision int) string {
	return title + "\nformat = " + strconv.Itoa(format) + "\nrevision = " + strconv.Itoa(revision) + "\n"
}

var (
	escape   = strings.NewReplacer("\\", "\\\\", "\n", "\\n", "\r", "\\r", "\t", "\\t")
	unescape = strings.NewReplacer("\\\\", "\\", "\\n", "\n", "\\r", "\r", "\\t", "\t")
)

// Escape writes a text on one line, without tabs; Unescape reads it back.
func Escape(text string) string {
	if escaped(text) == 0 { // nearly always, and asked for each line at every key press
		return text
	}
	return escape.Replace(text)
}

// Unescape reads a text that Escape wrote.
func Unescape(text string) string { return unescape.Replace(text) }

// Load reads a saved text back. Errors: ErrNotAJob, ErrNewer, ErrDamaged,
// ErrTooLarge, *LimitError, some wrapped with the place.
func Load(text string) (d Document, revision int, err error) {
	if len(text) > MaxSaved {
		return d, 0, ErrTooLarge
	}
	top, body, found := strings.Cut(text, "\n\n")
	if !found {
		return d, 0, ErrNotAJob
	}
	format, revision, err := header(top)
	if err != nil {
		return d, 0, err
	}
	fits := top+"\n" == head(format, revision, []byte(body))
	switch {
	case format > Format && fits:
		return d, 0, fmt.Errorf("%w: format %d", ErrNewer, format)
	case format > Format: // either, or a digit that flipped
		return d, 0, fmt.Errorf("%w, or %w: format %d", ErrNewer, ErrDamaged, format)
	case !fits:
		return d, 0, ErrDamaged
	}
	var lines []Line
	for line := range strings.Lines(body) {
		path, raw, found := strings.Cut(strings.TrimSuffix(line, "\n"), " = ")
		if !found {
			return Document{}, 0, fmt.Errorf("%w: line %q", ErrNotAJob, line)
		}
		lines = append(lines, Line{path, unescape.Replace(raw)})
	}
	d = Of(lines)
	return d, revision, Root.checkLimits(d, "")
}

// header reads format and revision. The checksum isn't read but computed again.
func header(head string) (format, revision int, err error) {
	lines := strings.Split(head, "\n")
	if len(lines) != 4 || lines[0] != title {
		return 0, 0, ErrNotAJob
	}
	format, err = strconv.Atoi(strings.TrimPrefix(lines[1], "format = "))
	if err == nil {
		revision, err = strconv.Atoi(strings.TrimPrefix(lines[2], "revision = "))
	}
	if err != nil || format < 1 || revision < 0 {
		return 0, 0, fmt.Errorf("%w: header %q", ErrNotAJob, head)
	}
	return format, revision, nil
}
