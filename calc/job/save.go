package job

import (
	"errors"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"
)

// Format is the version of the saved text that this program writes. It reads
// all older ones.
const Format = 1

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

// Save gives the document as text: a title, the format, a revision that grows
// with every save, a checksum over the lines, and the lines.
func Save(d Document, revision int) string {
	var body strings.Builder
	for _, l := range d.lines {
		body.WriteString(l.Path + " = " + escape.Replace(l.Text) + "\n")
	}
	return fmt.Sprintf("%s\nformat = %d\nrevision = %d\nchecksum = %08x\n\n%s",
		title, Format, revision, checksum(body.String(), revision), body.String())
}

// checksum covers the revision too, so that a flipped digit there can't make
// an old copy look like the newer one.
func checksum(body string, revision int) uint32 {
	return crc32.ChecksumIEEE([]byte(strconv.Itoa(revision) + "\n" + body))
}

var (
	escape   = strings.NewReplacer("\\", "\\\\", "\n", "\\n", "\r", "\\r")
	unescape = strings.NewReplacer("\\\\", "\\", "\\n", "\n", "\\r", "\r")
)

// Load reads a saved text back. Errors: ErrNotAJob, ErrNewer, ErrDamaged,
// ErrTooLarge, wrapped with the place.
func Load(text string) (d Document, revision int, err error) {
	if len(text) > MaxSaved {
		return d, 0, ErrTooLarge
	}
	head, body, found := strings.Cut(text, "\n\n")
	if !found {
		return d, 0, ErrNotAJob
	}
	format, revision, sum, err := header(head)
	if err != nil {
		return d, 0, err
	}
	if format > Format {
		return d, 0, fmt.Errorf("%w: format %d", ErrNewer, format)
	}
	if checksum(body, revision) != sum {
		return d, 0, ErrDamaged
	}
	for _, line := range strings.Split(strings.TrimSuffix(body, "\n"), "\n") {
		path, raw, found := strings.Cut(line, " = ")
		if line != "" && !found {
			return Document{}, 0, fmt.Errorf("%w: line %q", ErrNotAJob, line)
		}
		if found {
			d.lines = append(d.lines, Line{path, unescape.Replace(raw)})
		}
	}
	return sorted(d), revision, nil
}

func header(head string) (format, revision int, sum uint32, err error) {
	lines := strings.Split(head, "\n")
	if len(lines) != 4 || lines[0] != title {
		return 0, 0, 0, ErrNotAJob
	}
	var wide uint64
	format, err = strconv.Atoi(strings.TrimPrefix(lines[1], "format = "))
	if err == nil {
		revision, err = strconv.Atoi(strings.TrimPrefix(lines[2], "revision = "))
	}
	if err == nil {
		wide, err = strconv.ParseUint(strings.TrimPrefix(lines[3], "checksum = "), 16, 32)
	}
	if err != nil {
		return 0, 0, 0, fmt.Errorf("%w: %v", ErrNotAJob, err)
	}
	return format, revision, uint32(wide), nil
}

// sorted makes a document of lines in any order; of two lines with one path
// the later counts.
func sorted(d Document) Document {
	var s Document
	for _, l := range d.lines {
		if n := len(s.lines); n == 0 || s.lines[n-1].Path < l.Path {
			if l.Text != "" {
				s.lines = append(s.lines, l)
			}
			continue
		}
		s = s.Set(l.Path, l.Text)
	}
	return s
}
