package browser_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/webdriver"
)

// sharing stands in for the phone's share sheet, which no driver reaches.
const sharing = `
	globalThis.handed = null;
	Object.defineProperty(navigator, "share", { configurable: true, value: async (what) => { handed = what; } });`

type handed struct{ Title, Text string }

// handedOver is what the page gave to the share sheet.
func handedOver(s *webdriver.Session) handed {
	var got *handed
	s.Until("the share sheet", func() bool { s.Script(&got, `return handed`); return got != nil })
	return *got
}

// onTheWay changes one letter in the middle of a link.
func onTheWay(link string) string {
	at := strings.Index(link, "#") + 60
	letter := "A"
	if link[at:at+1] == letter {
		letter = "B"
	}
	return link[:at] + letter + link[at+1:]
}

// A job goes over as a link: made in one browser, it opens in each on a phone that never saw it. It is asked about, replaces
// nothing by itself, and can be undone; one that was changed or cut on the way is refused.
func TestAJobGoesOverAsALink(t *testing.T) {
	url := shed(t, servedReal(t))
	links := map[string]string{}
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.Open(url)
		ready(s)
		withJob(s, twoDecks+"name = Tern\n")
		goTo(s, "settings")
		s.Script(nil, sharing)
		do(s, "link", "", "")
		got := handedOver(s)
		assert.Equal(t, "Tern", got.Title)
		assert.True(t, strings.HasPrefix(got.Text, url), "%s", got.Text)
		links[s.Engine] = got.Text

		s.Script(nil, `Object.defineProperty(navigator, "share", { configurable: true, value: undefined }); did.copied = ""`)
		do(s, "link", "", "")
		var copied string
		s.Until("the copied link", func() bool { s.Script(&copied, `return did.copied`); return copied != "" })
		assert.Equal(t, got.Text, copied, "without a share sheet it is copied")
	})
	require.NotEmpty(t, links)
	for from, link := range links {
		inBoth(t, func(t *testing.T, s *webdriver.Session) {
			s.SetSize(360, 740)
			s.Open(link)
			ready(s)
			assert.Contains(t, shown(s, "#notice"), "This link holds a job: Tern, 2 surfaces, 0 cups.", "made by %s", from)
			var address string
			s.Script(&address, `return location.href`)
			assert.NotContains(t, address, "#job", "a reload doesn't ask again")
			assert.Empty(t, figuresOfArea(s), "nothing is replaced by itself")
			do(s, "take-job", "", "")
			goTo(s, "surfaces")
			assert.Equal(t, "5.4 m²", figureText(s, "area"))
			s.Refresh()
			ready(s)
			goTo(s, "surfaces")
			assert.Equal(t, "5.4 m²", figureText(s, "area"))
			do(s, "undo", "", "")
			assert.Empty(t, figuresOfArea(s), "undo brings the job before it back")

			withJob(s, strings.Replace(twoDecks, "2.4 m", "2 m", 1))
			before, _ := newest(s)
			for _, bad := range []string{onTheWay(link), link[:len(link)-9], link[:strings.Index(link, "#")] + "#job=1." + strings.Repeat("A", 70_000)} {
				s.Script(nil, `location.hash = arguments[0]`, bad[strings.Index(bad, "#"):])
				s.Until("that it is refused", func() bool { return strings.Contains(shown(s, "#notice"), "Nothing was changed") })
				assert.False(t, s.Has(`button[data-do="take-job"]`))
				do(s, "go", "cup", "")
				after, _ := newest(s)
				assert.Equal(t, before.Lines(), after.Lines())
			}
			s.Script(nil, `location.hash = arguments[0]`, link[strings.Index(link, "#"):])
			do(s, "drop-job", "", "")
			goTo(s, "surfaces")
			assert.Equal(t, "4.8 m²", figureText(s, "area"), "left alone, it stays as it was")
		})
	}
}

// figuresOfArea is the whole area on the screen of surfaces; "" where there is none.
func figuresOfArea(s *webdriver.Session) string {
	goTo(s, "surfaces")
	if !s.Has(`[id="why-area"]`) {
		return ""
	}
	return figureText(s, "area")
}

// The order list goes through the share sheet as text.
func TestTheOrderGoesThroughTheShareSheet(t *testing.T) {
	inShed(t, func(t *testing.T, s *webdriver.Session) {
		withJob(s, twoDecks)
		goTo(s, "order")
		s.Script(nil, sharing)
		do(s, "share", "", "")
		assert.Contains(t, plain(handedOver(s).Text), "• Polyester gel coat: ")
		do(s, "csv", "", "")
		rows := csvSaved(t, s)
		require.Greater(t, len(rows), 3)
		assert.Equal(t, "material", rows[0][0])
		for _, row := range rows {
			assert.Len(t, row, len(rows[0]))
		}
	})
}
