package view

import (
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/words"
)

// jobsSheet is every job, to be opened by a tap.
func jobsSheet(s *page.State) shown {
	var rows []html
	for _, row := range s.Jobs() {
		rows = append(rows, jobRow(s, row))
	}
	rows = append(rows, el("button", a("class", "listrow", "type", "button", "id", "open-demo", "data-do", "demo", "data-path", "", "data-text", ""),
		el("span", a("class", "name"), txt(words.MadeUpJob), el("small", nil, txt(words.MadeUpShort))),
		el("b", nil, txt(openNow(s.InDemo)))))
	return shown{Title: words.Jobs, Body: join(
		region("list-jobs", "div", a("class", "jobs", "tabindex", "-1"), rows...),
		hint(words.JobsLong)),
		Act: act("job-new", "", "", words.NewJobButton)}
}

func jobRow(s *page.State, row page.JobRow) html {
	small := words.NeverWorkedOn
	switch {
	case row.Fails:
		small = words.JobFailsShort
	case row.Worked != "":
		small = words.JobSmall(row.Surfaces, words.Date(row.Worked, s.Now.Date))
	case row.Surfaces > 0:
		small = words.JobSmall(row.Surfaces, "")
	}
	name := jobName(row)
	more := page.JobSheet + "." + row.Number
	return el("div", a("class", "jobrow"),
		el("button", a("class", "listrow", "type", "button", "id", "do-job-open-"+row.Number, "data-do", "job-open", "data-path", row.Number, "data-text", ""),
			el("span", a("class", "name"), txt(name), el("small", nil, txt(small))), el("b", nil, txt(openNow(row.IsHere && !s.InDemo)))),
		el("button", a("class", "tool", "type", "button", "id", page.OpenerID(more), "data-do", "sheet", "data-path", more,
			"aria-label", words.MoreOfJob(name)), txt("⋯")))
}

func openNow(is bool) string {
	if is {
		return words.ThisJob
	}
	return ""
}

func jobName(row page.JobRow) string {
	if row.Name == "" {
		return words.UnnamedJob
	}
	return row.Name
}

// jobSheet is what can be done with one job.
func jobSheet(s *page.State, number string) shown {
	for _, row := range s.Jobs() {
		if row.Number != number {
			continue
		}
		return shown{Title: jobName(row), Body: join(
			el("p", nil, txt(words.JobHolds(row.Surfaces, row.Cups))),
			setAction("job-copy", number, words.CopyJob, words.CopyJobLong),
			setAction("job-remove", number, words.RemoveIt, words.RemoveJobLong))}
	}
	return shown{Title: words.Jobs}
}

// setAction is a button with what it does below.
func setAction(do, path, name, small string) html {
	return el("div", a("class", "setaction"), action(do, path, "", name, "quiet"), hint(small))
}

// jobsLine leads from the settings to the jobs.
func jobsLine(s *page.State) html {
	others := len(s.Jobs()) - 1
	return look("jobs", words.JobsKept(others), page.JobsSheet)
}
