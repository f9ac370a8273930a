package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// inTwoTabs runs a test on two tabs of one browser with the same store, the first of them shown.
func inTwoTabs(t *testing.T, test func(t *testing.T, s *webdriver.Session, first, second string)) {
	t.Helper()
	url := shed(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		first := s.Tab()
		second := s.NewTab()
		s.Open(url)
		ready(s)
		s.SwitchTo(first)
		test(t, s, first, second)
	})
}

const otherTab = "changed in another tab"

// told waits until the tab that is shown says that the other has changed the job.
func told(s *webdriver.Session) {
	s.Until("the other tab's change", func() bool { return strings.Contains(shown(s, "#notice"), otherTab) })
}

// keptName is the name of the job as the browser's store has it.
func keptName(s *webdriver.Session) string {
	doc, _ := newest(s)
	return doc.Get("name")
}

// A tab that another has overtaken is told so, keeps nothing by itself, and goes on with the job that is chosen.
func TestTwoTabsAreToldApart(t *testing.T) {
	inTwoTabs(t, func(t *testing.T, s *webdriver.Session, first, second string) {
		goTo(s, "settings")
		s.SwitchTo(second)
		goTo(s, "settings")
		fill(s, "name", "By the second")
		assert.NotContains(t, shown(s, "#notice"), otherTab)

		s.SwitchTo(first)
		told(s)
		assert.Empty(t, s.Value(control("name")))
		fill(s, "name", "By the first")
		fill(s, "currency", "EUR")
		assert.Equal(t, "By the second", keptName(s), "nothing is kept over it")
		assert.Contains(t, shown(s, "#notice"), "this tab keeps nothing")

		s.SwitchTo(second)
		fill(s, "name", "By the second, later")
		s.SwitchTo(first)
		do(s, "mine", "", "")
		assert.NotContains(t, shown(s, "#notice"), otherTab)
		assert.Equal(t, "By the first", keptName(s))

		s.SwitchTo(second)
		told(s)
		fill(s, "name", "By the second, too late")
		assert.Equal(t, "By the first", keptName(s))
		do(s, "theirs", "", "")
		assert.Equal(t, "By the first", s.Value(control("name")))
		assert.Equal(t, "EUR", s.Value(control("currency")))
		fill(s, "name", "Together")
		s.SwitchTo(first)
		told(s)
		do(s, "theirs", "", "")
		assert.Equal(t, "Together", s.Value(control("name")))
		s.Refresh()
		ready(s)
		assert.Equal(t, "Together", s.Value(control("name")))
		assert.NotContains(t, shown(s, "#notice"), otherTab)
	})
}

// weighedInBoth weighs a cup in the tab that is shown, and goes to the second, which has it open too.
func weighedInBoth(t *testing.T, s *webdriver.Session, second string) {
	t.Helper()
	atBench(s)
	toCatalyst(s)
	s.SwitchTo(second)
	s.Refresh()
	ready(s)
	goTo(s, "cup")
	require.True(t, s.Has("#catalyst-in"), "the weighed cup is open in both")
	require.Contains(t, shown(s, "#dose"), "1.6 g")
}

// A cup is dosed once, whichever tab it was weighed in, and its clock runs in the tab that goes on.
func TestACupIsDosedInOneTabOnly(t *testing.T) {
	inTwoTabs(t, func(t *testing.T, s *webdriver.Session, first, second string) {
		weighedInBoth(t, s, second)
		s.SwitchTo(first)
		tap(s, "#catalyst-in")
		s.Wait(".clock")
		s.SwitchTo(second)
		told(s)
		assert.False(t, s.Has("#catalyst-in"), "not a second time")
		checkDoseGone(t, s, "once the other tab has put catalyst in")
		do(s, "mine", "", "")
		s.Wait(".clock")
		checkDoseGone(t, s, "with this tab's job, and the other's clock")
		s.Refresh()
		ready(s)
		s.Wait(".clock")
		checkDoseGone(t, s, "after a reload")
		s.SwitchTo(first)
		s.Wait(".clock")
		assert.NotContains(t, shown(s, "#notice"), otherTab, "both have come to the same job")
		checkDoseGone(t, s, "in the first tab")
	})
}

// Where the store refuses the save that tells of the catalyst, the permit that is taken away tells the other tab.
func TestAFullStoreTellsTheOtherTabOfTheCatalyst(t *testing.T) {
	inTwoTabs(t, func(t *testing.T, s *webdriver.Session, first, second string) {
		weighedInBoth(t, s, second)
		s.SwitchTo(first)
		s.Script(nil, takesNoJob)
		tap(s, "#catalyst-in")
		s.Wait(".clock")
		s.SwitchTo(second)
		s.Until("the dose to go", func() bool { return !s.Has("#catalyst-in") })
		checkDoseGone(t, s, "once the other tab has put catalyst in")
		assert.Contains(t, shown(s, "#answer"), "may have its catalyst in: add none")
		s.Refresh()
		ready(s)
		assert.False(t, s.Has("#catalyst-in"), "nor after a reload")
		s.Wait(".clock") // the store on the disk took what the quick one refused
		checkDoseGone(t, s, "after a reload")
	})
}
