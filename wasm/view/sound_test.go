package view_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

var (
	tagAt    = regexp.MustCompile(`<(/?)([^ />]*)([^>]*?)(/?)>`)
	theAct   = regexp.MustCompile(`<div id="act" class="act">(.*?)</div>`)
	attrOf   = regexp.MustCompile(` ([^ ="]*)="([^"]*)"`)
	styled   = regexp.MustCompile(`\.([a-z][a-z0-9-]*)`)
	phrasing = words2set("b i u small strong sub sup span label output input select textarea button svg option")
	// holdsText are elements that hold nothing but text and such elements (HTML, 3.2.5.2.5: phrasing content). A browser that
	// meets another one in a p ends the p there.
	holdsText = words2set("p span b i u small strong sub sup label output button h1 h2 h3 legend select option")
	mustLieIn = map[string]string{"li": "ul ol", "option": "select", "td": "tr", "th": "tr", "tr": "tbody thead", "tbody": "table", "thead": "table", "legend": "fieldset"}
	ofHTML    = words2set("main header section article div nav p h1 h2 h3 ul ol li table thead tbody tr th td fieldset legend progress") // and phrasing
	ofSVG     = words2set("svg path line rect circle ellipse polyline polygon text g")
	// anyText are attributes that hold a text, an id or a figure; of the others these are the values that they may have.
	anyText = words2set("id data-do data-path data-text data-sheet aria-label aria-description aria-describedby for placeholder value " +
		"d x y width height viewBox x1 y1 x2 y2 cx cy r rx ry stroke-dasharray transform points font-size dy min max step")
	values = map[string]string{
		"aria-current": "page", "aria-disabled": "true", "aria-expanded": "true false", "aria-hidden": "true", "aria-labelledby": "sheet-heading",
		"aria-live": "polite", "aria-pressed": "true false", "autocomplete": "off", "data-enter": "next", "data-paste": "paste", "data-open": "true false",
		"data-ticked": "true false", "enterkeyhint": "next", "hidden": "", "inputmode": "decimal numeric text", "role": "group img timer region", "rows": "4",
		"spellcheck": "false", "tabindex": "-1 0", "text-anchor": "start middle end", "scope": "col row",
		"data-is": "holds asks stops unchecked takes on over last test",
		"type":    "button text range",
	}
)

func words2set(words string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(words) {
		set[w] = true
	}
	return set
}

// classesOfTheStyle is every class that has a rule, and those that mark a place for what isn't style.
var classesOfTheStyle = func() map[string]bool {
	set := words2set("what axis takes timebar sketch map sureness finding shelf one units on test sign setaction jobs measures logged")
	for _, screen := range page.Screens {
		set["screen-"+screen.Key] = true
	}
	names, _ := filepath.Glob("../../site/style/*.css")
	for _, name := range names {
		text, _ := os.ReadFile(name)
		for _, m := range styled.FindAllStringSubmatch(string(text), -1) {
			set[strings.TrimRight(m[1], "0123456789")] = true
		}
	}
	return set
}()

// sound holds a page to what HTML and the page's own style know: elements and attributes that there are, with values that they
// take, each where it may stand; classes that look like something; ids once, and nothing that points at none.
func sound(t *testing.T, name, html string) {
	t.Helper()
	var open []string
	ids, points := map[string]bool{}, map[string]string{}
	for _, m := range tagAt.FindAllStringSubmatch(html, -1) {
		tag := m[2]
		if m[1] != "" {
			require.NotEmpty(t, open, name)
			require.Equal(t, open[len(open)-1], tag, name)
			open = open[:len(open)-1]
			continue
		}
		if !slices.Contains(open, "svg") {
			assert.True(t, ofHTML[tag] || phrasing[tag], "%s: %s is no element", name, m[0])
			for _, above := range open {
				assert.True(t, phrasing[tag] || !holdsText[above], "%s: %s in a %s", name, m[0], above)
			}
			if in, must := mustLieIn[tag]; must {
				assert.Contains(t, strings.Fields(in), open[len(open)-1], "%s: %s", name, m[0])
			}
		} else {
			assert.True(t, ofSVG[tag], "%s: %s is no element of a picture", name, m[0])
		}
		start := startOf(t, name, m[0], m[3])
		if start.id != "" {
			assert.False(t, ids[start.id], "%s: %s stands twice", name, start.id)
			ids[start.id] = true
		}
		if start.at != "" {
			points[start.at] = m[0]
		}
		if m[4] == "" {
			open = append(open, tag)
		}
	}
	assert.Empty(t, open, name)
	if act := theAct.FindStringSubmatch(html); act != nil {
		assert.Regexp(t, `^(<button class="main( second)?"[^>]*>[^<]*</button>){0,2}$`, act[1], "%s: the act bar has one thing to do, or two", name)
	}
	for id, by := range points {
		assert.True(t, ids[id], "%s: %s points at nothing", name, by)
	}
}

// start is what a start tag says of itself and of another element.
type start struct{ id, at string }

// starts are those that were looked at: on the next page most are the same.
var starts = map[string]start{}

// startOf holds a start tag to the attributes that there are, and to their values.
func startOf(t *testing.T, name, tag, text string) (s start) {
	t.Helper()
	if known, isKnown := starts[tag]; isKnown {
		return known
	}
	attrs := attrOf.FindAllStringSubmatch(text, -1)
	for i, a := range attrs {
		for _, before := range attrs[:i] {
			assert.NotEqual(t, before[1], a[1], "%s: %s", name, tag)
		}
		key, value := a[1], a[2]
		switch allowed, known := values[key]; {
		case key == "class":
			for _, class := range strings.Fields(value) {
				assert.True(t, classesOfTheStyle[strings.TrimRight(class, "0123456789")], "%s: %s looks like nothing", name, tag)
			}
		case known:
			assert.True(t, allowed == value || slices.Contains(strings.Fields(allowed), value), "%s: %s", name, tag)
		default:
			assert.True(t, anyText[key], "%s: %s has no such attribute", name, tag)
		}
		switch key {
		case "id":
			s.id = value
		case "for", "aria-describedby", "aria-labelledby":
			s.at = value
		}
	}
	starts[tag] = s
	return s
}

// What no state of a job brings on everywhere: a page in trouble, a cup of a fixed ratio, a figure that is asked about.
func TestPagesInTroubleAreSound(t *testing.T) {
	demo := madeUp("surfaces")
	for name, s := range map[string]*page.State{
		"asked":        do(do(demo, "set", "surface.1.height", "20 mm"), "sheet", "surface.1", ""),
		"refused":      do(do(demo, "set", "surface.1.height", "none"), "sheet", "surface.1", ""),
		"refused away": do(do(demo, "set", "surface.1.height", "none"), "go", "order", ""),
		"not stored":   do(demo, "not-kept", "", ""),
		"girths":       do(do(demo, "add", "surface", "girths"), "go", "surfaces", "surface.4"),
		"comma":        do(demo, "decimal", "", "comma"),
		"stops":        do(do(demo, "set", "surface.3.ground", "polystyrene"), "go", "order", ""),
	} {
		sound(t, name, view.Page(s).String())
	}
}
