package words

// A cup whose catalyst is in.
const (
	LeftToSpread  = "left to spread"
	LastMinute    = "last minute: finish the stretch"
	TimeIsUp      = "time is up: stop, put the rest outside"
	StopSpreading = "stop spreading"
	GelsFrom      = "gels, earliest"
	GelsUntil     = "gels, latest"
	SinceCatalyst = "since the catalyst"
	AllSpread     = "All spread"
	SomeLeft      = "Some left"
	ItGelled      = "It gelled"
	WontGoOff     = "It won't go off"
	StringSnapped = "It gelled: the string snapped"
	SilentYet     = "No alarm yet: tap anywhere once to allow the sound."
	Unsettled     = "This clock may be lost if the browser ends now: set the phone's own timer too, and mark the cup: catalyst in."
	OwnTimer      = "This phone lets the screen sleep, and then there is no alarm: set the phone's own timer too."
	TestHow       = "Stir 60\u00a0s, then leave the cup, on something that can't burn. Lift a string out now and then: when it snaps, it has gelled."
	AddNothing    = "Add nothing."
	SecondDose    = "A second dose can run away: heat, smoke, fire."
	WarmThePart   = "Warm the part and the air around it, into the card's range. No flame, no glowing element; never warm peroxide."
	ItWentOff     = "It went off after all"
	ScrapedOff    = "Scraped off"
	ClockUnknown  = "Time not known"
	CupsRunning   = "Running cups"
)

// CatalystIsIn is read out once the clock runs.
func CatalystIsIn(stop string) string {
	if stop == "" {
		return "Catalyst in. The clock runs."
	}
	return "Catalyst in. The clock runs. Stop spreading at " + stop + "."
}

// TestJumped says why a timed test isn't taken at once.
const TestJumped = "Logged, but not taken as a cup test: the phone's clock jumped while it ran. If your own watch agrees with the minutes, take it as a test in the Log."

// TestTooShort says why a timed test of no time is none.
const TestTooShort = "Logged, but not taken as a cup test: nothing gels that fast."

// TestIsIn is read out once a timed test runs.
const TestIsIn = "Catalyst in. The test runs: say when it gels."

// SetBack says that the phone's clock went back while a cup ran.
func SetBack(minutes string) string {
	return "The phone's clock was set back by " + minutes + " while this cup ran. That is allowed for here."
}

// SetOn says that the clock jumped on while the page was awake, or that it slept.
func SetOn(minutes string) string {
	return "The phone's clock jumped ahead by " + minutes + ": it slept, or was set. If it was set, go by your own watch."
}

// Zone says that the phone's time of day moved while a cup ran, though no time was lost.
const Zone = "The phone changed its time zone while this cup ran. The time left is right; the hours here are by the phone as it is now."

// Ahead says that the catalyst went in later than it is now.
func Ahead(hour string) string {
	return "By the phone's clock the catalyst has yet to go in, at " + hour + ": the clock was set back. Go by your own watch."
}

// DaysOld says of a cup that nobody ended long ago.
func DaysOld(days string) string {
	return "Its catalyst went in " + days + " ago, and how it ended was never logged."
}

// StillInTime says until when a film may take that doesn't go off, as cold as it is.
func StillInTime(hour, minutes string) string {
	return "At this temperature it may take until " + hour + ": " + minutes + " from catalyst in."
}

// OnceWarm says until when it may take once the part is warm.
func OnceWarm(temp, hour string) string {
	return "With the part at " + temp + " it should have gone off by " + hour + "."
}

// TooColdToSay says that no minutes are known for a film so cold.
const TooColdToSay = "No minutes are known for a film this cold: warm it first."

// ThenScrape says what comes after the wait.
func ThenScrape(hour string) string {
	return "Still soft at " + hour + ": scrape it off while it will come off, wipe with the solvent the maker names, and start again with a test cup."
}

// Logged heads what is asked of a cup that ended with some left.
func Logged(cup string) string { return "Logged: " + cup }

// What was left over.
const (
	WhatWasLeft = "What was left over, in cup and tool?"
	OnlyClings  = "Only what clings"
	AQuarter    = "A quarter"
	Half        = "Half"
	AllOfIt     = "All of it"
	WeighLater  = "Weigh it, note more"
)
