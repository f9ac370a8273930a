package words

import (
	"errors"
	"strconv"

	"shedreckoner/calc/job"
)

// What is said of jobs that come as a file or a link.
const (
	NotCopied       = "This browser didn't let the page copy. Save the CSV, or print."
	Copied          = "Copied."
	TooLargeForLink = "This job is too large for a link. Export it as a file, and send that."
	NothingChanged  = "Nothing was changed."
	SameJob         = "That is the job as it stands here. " + NothingChanged
	NotKept         = "Not kept. Export the job as a file before you close the page."

	linkTooLong = "That link is longer than any that this page makes. " + NothingChanged + " Ask for the job as a file."
	linkDamaged = "That link is cut short or changed: its checksum doesn't fit. " + NothingChanged + " Ask for it again, or for the job as a file."
	linkNewer   = "That link was made by a newer version of this page. " + NothingChanged + " Reload the page, then open the link again."
)

// ImportFails says why a file isn't taken.
func ImportFails(err error) string {
	var limit *job.LimitError
	switch {
	case errors.As(err, &limit):
		return "That file holds more than this page can take: " + strconv.Itoa(limit.Items) + " under " + limit.List.Key +
			", at most " + strconv.Itoa(limit.List.Max) + ". " + NothingChanged
	case errors.Is(err, job.ErrNewer):
		return "That file was saved by a newer version of this page. " + NothingChanged + " Reload the page to get the newer version, then import again."
	case errors.Is(err, job.ErrDamaged):
		return "That file is damaged: its checksum doesn't fit. " + NothingChanged
	case errors.Is(err, job.ErrTooLarge):
		return "That file is larger than 1 MB, more than any job. " + NothingChanged
	}
	return "That file isn't a job saved by this page. " + NothingChanged
}

// LinkFails says why a link isn't taken.
func LinkFails(err error, isTooLong bool) string {
	switch {
	case isTooLong, errors.Is(err, job.ErrTooLarge):
		return linkTooLong
	case errors.Is(err, job.ErrDamaged), errors.Is(err, job.ErrNotAJob):
		return linkDamaged
	case errors.Is(err, job.ErrNewer):
		return linkNewer
	}
	return ImportFails(err)
}

// LinkHolds says which job a link brought.
func LinkHolds(name string, surfaces, cups int) string {
	if name == "" {
		name = "without a name"
	}
	return "This link holds a job: " + name + ", " + Counted(surfaces, "surface", "surfaces") + ", " + Counted(cups, "cup", "cups") + "."
}

// LogFails says which line of an incoming job's log can't be.
func LogFails(path, text string) string {
	return "That job wasn't taken: its log holds an impossible entry (" + path + " = " + text + "). " + NothingChanged
}

// LogAhead asks about a log that lies so many days in the future.
func LogAhead(days int) string {
	return "By this phone's clock, its log runs " + strconv.Itoa(days) + " days into the future. Is one of the two clocks wrong?"
}
