package words

import (
	"strings"
)

// The jobs, and going from one to the other.
const (
	Jobs          = "Jobs"
	JobsLong      = "Cards, tools, tins with their tests, stock and what your hand takes belong to the shed: every job shares them. Surfaces, build-ups and the log belong to the job."
	NewJobButton  = "New job"
	ThisJob       = "Open now"
	NeverWorkedOn = "nothing changed yet"
	JobFailsShort = "can't be read"
	CopyJob       = "Copy"
	CopyJobLong   = "A copy has the surfaces and build-ups, and an empty log."
	RemoveJobLong = "It goes for good, with its log. Undo doesn't bring it back: export it first if you may want it."
	RemoveIt      = "Remove it"
	MadeUpJob     = "Made-up job"
	MadeUpShort   = "an invented boat to look around in"

	NewJob       = "A new job, with the shed as it is. The job before is in Jobs."
	CopiedJob    = "A copy. The job before is in Jobs."
	RemovedJob   = "The job is gone."
	JobFails     = "What was kept of that job can't be read. It is set aside: save it as a file."
	JobAhead     = "That job was kept by a newer version of this page. Reload the page to get it."
	NoOtherJob   = "Another job can't be opened now: what this browser has kept must stay as it is."
	NoRoomForJob = "The browser has no room to put this job away. Nothing was changed. Export the job as a file, or remove another one."
	TooManyJobs  = "Fifty jobs are kept, and no more. Remove one first."
)

// Imported tells of a job that came in, and of the cards that came with it.
func Imported(cards []string, isAnother bool) string {
	text := "Imported. Undo takes it out again."
	if isAnother {
		text = "Imported. The job before is in Jobs."
	}
	switch n := len(cards); {
	case n == 1:
		text += " Its card " + cards[0] + " is now beside yours."
	case n > 1:
		text += " Its cards " + strings.Join(cards[:n-1], ", ") + " and " + cards[n-1] + " are now beside yours."
	}
	return text
}

// JobSmall is the line under a job's name.
func JobSmall(surfaces int, day string) string {
	text := Counted(surfaces, "surface", "surfaces")
	if day != "" {
		text += " · last worked on " + day
	}
	return text
}

// JobHolds says what is in a job, before it is copied or removed.
func JobHolds(surfaces, cups int) string {
	return "It holds " + Counted(surfaces, "surface", "surfaces") + " and " + Counted(cups, "cup", "cups") + "."
}

// MoreOfJob names the way to what can be done with a job.
func MoreOfJob(name string) string { return "Copy or remove: " + name }

// JobsKept says how many other jobs there are.
func JobsKept(others int) string {
	if others == 0 {
		return "This is the only job."
	}
	return Counted(others, "other job", "other jobs") + " kept."
}
