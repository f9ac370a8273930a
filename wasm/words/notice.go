package words

import (
	"strconv"

	"shedreckoner/calc/job"
)

// What the whole page has to say.
const (
	NotStored = "This browser doesn't keep what is typed: it is full, or it lets this page keep nothing. Export the job as a file before you close the page."
	ExportJob = "Export the job"

	ChangedElsewhere = "This job was changed in another tab. Until you choose, this tab keeps nothing."
	ShowTheirs       = "Show the other tab's"
	KeepMine         = "Keep this one"

	Behind    = "This phone is slow to read what was kept last: what is shown may be older. The newest is shown as soon as it comes."
	CameLate  = "What was kept last came late. It is shown now."
	NewerCame = "A newer state of this job came late from the disk. Until you choose, nothing more is kept."
	ShowNewer = "Show the newer"

	SetAside   = "Something kept earlier can't be read. It was set aside, not lost."
	StuckAside = "Something kept earlier can't be read, and there is no room to set it aside. Until you save it as a file, this page keeps nothing over it."
	SaveAside  = "Save it as a file"

	KeptAhead = "What this browser keeps was saved by a newer version of this page. This older one shows none of it and changes nothing there: " +
		"what you type here is not kept. Close it, or reload it to get the newer version."

	KeptOffline    = "This page is kept on the phone and works without a network."
	NotKeptOffline = "This page isn't kept on the phone: without a network it won't open. It tries again at each start. The page as one file works anywhere."

	FellBack = "The newer version of this page doesn't start here. The one before goes on; your job is the same."

	NotALink = "What follows the # in that link is no job of this page. Nothing was changed. Ask for the link again, or for the job as a file."

	NewVersion = "A newer version of this page is ready."
	UseItNow   = "Use it now"

	MadeUpLong  = "Nobody measured this boat, and its log is invented. Your own job is untouched."
	BackToMine  = "Back to my job"
	ClearMadeUp = "Clear the made-up job"

	CantRead = "Something typed can't be read. What follows from it shows a dash until it is put right."
	PutRight = "To be put right:"
)

// Short answers to what was just done or can't be.
const (
	ChooseATabFirst    = "There are two states of this job. First choose which of the two to keep."
	LogFull            = "The log is full. Export the job, then remove old cups."
	EndTheCupFirst     = "A cup is open. End it first."
	IsATestAlready     = "This cup is taken as a cup test already."
	TakenAsTest        = "Taken as a cup test. The minutes of this card follow it from now on."
	TooMuchTyped       = "That is more than a job can hold. It was not taken."
	ReadingBeforeProud = "Type the reading first, then say that it is proud."
	ReloadAfterCup     = "A cup is open. End it first: the page reloads for the newer version."
	Removed            = "Removed. Undo brings it back."
)

// CatalystMayBeIn is how a weighed cup ended that another tab or a failure took over; the
// log keeps it, so it stays as it is.
const CatalystMayBeIn = "catalyst may be in: add none"

// ListFull says that a list takes no more.
func ListFull(list *job.List) string {
	return "A job holds at most " + strconv.Itoa(list.Max) + " of these. Remove one first, or start another job."
}

// Pasted says how many readings came in, rows of cells, and which row is short.
func Pasted(rows [][]string) string {
	text := strconv.Itoa(len(rows)) + " × " + strconv.Itoa(len(rows[0])) + " readings pasted."
	for i, r := range rows {
		if len(r) != len(rows[0]) {
			return text + " Row " + strconv.Itoa(i+1) + " has " + strconv.Itoa(len(r)) + ": check what is missing."
		}
	}
	return text
}
