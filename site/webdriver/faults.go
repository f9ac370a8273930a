package webdriver

// Collector is a script that notes what goes wrong in a page. WebKit's driver tells nothing of the console, so a test puts
// this before the first script of the page; where that can't be, Faults puts it in when it is first called.
const Collector = `
if (!globalThis.webdriverFaults) {
	const faults = globalThis.webdriverFaults = [];
	addEventListener("error", (e) => faults.push("error: " + (e.message || e.target.src || e.target.href)), true);
	addEventListener("unhandledrejection", (e) => faults.push("unhandled rejection: " + e.reason));
	addEventListener("securitypolicyviolation", (e) =>
		faults.push("policy " + e.effectiveDirective + " blocked " + e.blockedURI + " " + e.sample));
	for (const level of ["error", "warn"]) {
		const write = console[level];
		console[level] = (...args) => { faults.push(level + ": " + args.join(" ")); write.apply(console, args); };
	}
}
`

// Faults gives what went wrong in the page since it was last asked: errors and warnings in the console, uncaught
// exceptions, breaches of the content security policy.
func (s *Session) Faults() []string {
	s.t.Helper()
	s.keepFaults()
	faults := s.faults
	s.faults = nil
	return faults
}

// keepFaults fetches the faults of the page that is open; in WebKit they are gone with it.
func (s *Session) keepFaults() {
	s.t.Helper()
	if s.Chromium() {
		s.faults = append(s.faults, s.chromiumLog()...)
		return
	}
	var faults []string
	s.Script(&faults, Collector+`return webdriverFaults.splice(0)`)
	s.faults = append(s.faults, faults...)
}

func (s *Session) chromiumLog() []string {
	s.t.Helper()
	var entries []struct{ Level, Message string }
	s.post("/se/log", map[string]any{"type": "browser"}, &entries)
	var faults []string
	for _, e := range entries {
		if e.Level == "SEVERE" || e.Level == "WARNING" {
			faults = append(faults, e.Message)
		}
	}
	return faults
}
