package browser_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"shedreckoner/site/webdriver"
)

// axNode is a node of Chromium's accessibility tree.
type axNode struct {
	Ignored    bool
	Role       struct{ Value string }
	Name       struct{ Value string }
	Properties []struct {
		Name  string
		Value struct{ Value any }
	}
}

func (n axNode) isFocusable() bool {
	for _, p := range n.Properties {
		if p.Name == "focusable" && p.Value.Value == true {
			return true
		}
	}
	return false
}

// Every control of every screen has a name, and the Tab key comes to each in turn.
func TestEveryControlIsNamedAndReachable(t *testing.T) {
	url := shed(t, servedReal(t))
	inBoth(t, func(t *testing.T, s *webdriver.Session) {
		s.SetSize(360, 740)
		s.Open(url)
		ready(s)
		goTo(s, "settings")
		do(s, "demo", "", "")
		s.Script(nil, withReadings, readings)
		for screen, open := range map[string][]string{
			"surfaces": {"surface.1"}, "buildup": {"buildup.1.step.1", "buildup.1.step.1.grid.2"}, "cup": nil, "order": nil, "log": {"cup.2"},
			"cards": {"card.gelcoat"}, "settings": nil, "sources": nil,
		} {
			visit(s, screen)
			for _, item := range open {
				unfold(s, item)
			}
			workedOut(s)      // there is more of the order then
			if s.Chromium() { // WebKit's driver shows no accessibility tree
				checkNames(t, s, screen)
			}
			checkTab(t, s, screen)
		}
	})
}

func checkNames(t *testing.T, s *webdriver.Session, screen string) {
	t.Helper()
	var tree struct{ Nodes []axNode }
	s.CDP(nil, "Accessibility.enable", nil)
	s.CDP(&tree, "Accessibility.getFullAXTree", nil)
	named := 0
	for _, n := range tree.Nodes {
		if n.Ignored || !n.isFocusable() || n.Role.Value == "RootWebArea" || n.Role.Value == "generic" {
			continue
		}
		assert.NotEmpty(t, n.Name.Value, "%s: a %s without a name", screen, n.Role.Value)
		named++
	}
	assert.Greater(t, named, 8, screen)
}

// checkTab goes through the page by the Tab key and holds what it came by against all controls that can be seen.
func checkTab(t *testing.T, s *webdriver.Session, screen string) {
	t.Helper()
	var all int
	s.Script(&all, `
		const name = (e) => e.id || e.outerHTML; // an element may be replaced meanwhile
		globalThis.unmet = new Set([...document.querySelectorAll("button, input, select, textarea, summary, a[href]")].filter((e) => e.getClientRects().length).map(name));
		document.activeElement.blur();
		addEventListener("focusin", globalThis.meet = (e) => unmet.delete(name(e.target)));
		return unmet.size;`)
	presses := make([]string, all+8)
	for i := range presses {
		presses[i] = webdriver.Tab
	}
	s.Keys(presses...)
	var left []string
	s.Script(&left, `removeEventListener("focusin", meet); return [...unmet]`)
	assert.Empty(t, left, "%s: out of reach of the keyboard", screen)
}
