package words

// What the whole page has to say.
const (
	NotStored = "This browser doesn't keep what is typed: it is full, or it lets this page keep nothing. Export the job as a file before you close the page."
	ExportJob = "Export the job"

	ChangedElsewhere = "This job was changed in another tab. Until you choose, this tab keeps nothing."
	ShowTheirs       = "Show the other tab's"
	KeepMine         = "Keep this one"

	SetAside   = "Something kept earlier can't be read. It was set aside, not lost."
	StuckAside = "Something kept earlier can't be read, and there is no room to set it aside. Until you save it as a file, this page keeps nothing over it."
	SaveAside  = "Save it as a file"

	KeptAhead = "What this browser keeps was saved by a newer version of this page. This older one shows none of it and changes nothing there: " +
		"what you type here is not kept. Close it, or reload it to get the newer version."

	KeptOffline    = "This page is kept on the phone and works without a network."
	NotKeptOffline = "This page isn't kept on the phone: without a network it won't open. It tries again at each start. The page as one file works anywhere."

	FellBack = "The newer version of this page doesn't start here. The one before goes on; your job is the same."

	NotALink = "What stands behind the # of that link is no job of this page. Nothing was changed. Ask for the link again, or for the job as a file."

	NewVersion = "A newer version of this page is ready."
	UseItNow   = "Use it now"

	MadeUp      = "Made-up job"
	MadeUpLong  = "Nobody measured this boat, and its log is invented. Your own job is untouched."
	BackToMine  = "Back to my job"
	ClearMadeUp = "Clear the made-up job"

	CantRead = "Something typed can't be read. What follows from it shows a dash until it is put right."
	PutRight = "To be put right:"
)
