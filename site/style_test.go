package site_test

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site"
)

// rule is a rule of the style sheet, with the at-rule about it.
type rule struct {
	about, selector string
	set             map[string]string
}

var (
	comment     = regexp.MustCompile(`(?s)/\*.*?\*/`)
	literal     = regexp.MustCompile(`(?i)#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|hwb|lab|lch|oklab|oklch|color|color-mix)a?\(|-?\b\d*\.?\d+(?:rem|em|px|pt|cm|mm|in|ex|ch|lh|vw|vh|vmin|vmax)\b`)
	colourWord  = regexp.MustCompile(`(?i)\b(?:black|white|red|green|blue|gr[ae]y|yellow|orange|brown|navy|teal|silver)\b`)
	token       = regexp.MustCompile(`var\(--([a-z0-9]+)\)`)
	tokensBlock = regexp.MustCompile(`^:root`)
)

// rules reads the style sheet. It knows no nesting beyond an at-rule.
func rules(t *testing.T) []rule {
	t.Helper()
	var (
		list  []rule
		about string
	)
	rest := comment.ReplaceAllString(string(site.Style()), "")
	for {
		end := strings.IndexAny(rest, "{}")
		if end < 0 {
			require.Empty(t, strings.TrimSpace(rest))
			return list
		}
		head := strings.TrimSpace(rest[:end])
		if rest[end] == '}' {
			about, rest = "", rest[end+1:]
			continue
		}
		rest = rest[end+1:]
		if strings.HasPrefix(head, "@media") {
			about = head
			continue
		}
		body, after, ok := strings.Cut(rest, "}")
		require.True(t, ok)
		list = append(list, rule{about, head, declarations(t, body)})
		rest = after
	}
}

func declarations(t *testing.T, body string) map[string]string {
	set := map[string]string{}
	for _, d := range strings.Split(body, ";") {
		if d = strings.TrimSpace(d); d != "" {
			name, value, ok := strings.Cut(d, ":")
			require.True(t, ok, d)
			set[name] = strings.TrimSpace(value)
		}
	}
	return set
}

// themes is the tokens of each theme: what the first table says, with what the
// theme says otherwise.
func themes(t *testing.T) map[string]map[string]string {
	list := map[string]map[string]string{}
	var base map[string]string
	for _, r := range rules(t) {
		if !tokensBlock.MatchString(r.selector) || strings.Contains(r.selector, " ") {
			continue
		}
		name := map[string]string{
			"": "light", "@media (prefers-color-scheme: dark)": "dark by the system",
			"@media (forced-colors: active)": "forced", "@media print": "print",
		}[r.about]
		if r.selector == `:root[data-look="dark"]` {
			name = "dark"
		}
		require.NotEmpty(t, name, "a table for %s %s", r.about, r.selector)
		tokens := map[string]string{}
		for k, v := range base {
			tokens[k] = v
		}
		for k, v := range r.set {
			if strings.HasPrefix(k, "--") {
				tokens[k[2:]] = v
			}
		}
		if base == nil {
			base = tokens
		}
		list[name] = tokens
	}
	return list
}

var (
	typeSizes = []string{"t0", "t1", "t2", "t3", "t4", "t5", "t6"}
	spaces    = []string{"s1", "s2", "s3", "s4", "s5", "s6"}
	colours   = []string{"paper", "sheet", "putty", "line", "ink", "pencil", "lead", "tape", "stop", "fit", "wet"}
)

func TestOneTableOfTokens(t *testing.T) {
	all := themes(t)
	require.Contains(t, all, "dark")
	assert.Equal(t, all["dark by the system"], all["dark"], "the two dark tables")
	for name, tokens := range all {
		hues := 0
		for key, value := range tokens {
			if slices.Contains(colours, key) {
				hues++
			} else {
				assert.Equal(t, all["light"][key], value, "%s changes --%s, which isn't a colour", name, key)
				assert.NotRegexp(t, `#|rgb|hsl`, value, "--%s is a colour outside the list", key)
			}
		}
		assert.Equal(t, len(colours), hues, name)
	}
	for _, key := range slices.Concat(typeSizes, spaces) {
		assert.Regexp(t, `^([0-9.]+rem|min\([0-9.]+rem, [0-9.]+vw\))$`, all["light"][key], "--%s follows the reader's text size", key)
	}
	for key := range all["light"] {
		if regexp.MustCompile(`^[ts]\d+$`).MatchString(key) {
			assert.True(t, slices.Contains(typeSizes, key) || slices.Contains(spaces, key), "--%s is one more than allowed", key)
		}
	}
}

func TestNoOtherValueInTheStyle(t *testing.T) {
	light := themes(t)["light"]
	for _, r := range rules(t) {
		isTable := tokensBlock.MatchString(r.selector) && !strings.Contains(r.selector, " ")
		for name, value := range r.set {
			for _, used := range token.FindAllStringSubmatch(value, -1) {
				assert.Contains(t, light, used[1], "%s in %s", name, r.selector)
			}
			assert.NotContains(t, value, "!important", "%s in %s", name, r.selector)
			assert.NotContains(t, r.selector, ":hover", "a gloved thumb hovers over nothing")
			if isTable || r.selector == "@page" {
				continue
			}
			assert.Empty(t, literal.FindString(value), "%s: %s in %s", name, value, r.selector)
			assert.Empty(t, colourWord.FindString(value), "%s: %s in %s", name, value, r.selector)
			switch name {
			case "font-size":
				assert.Regexp(t, `^(var\(--t[0-6]\)|100%)$`, value, r.selector)
			case "block-size", "height", "max-block-size", "max-height":
				assert.Regexp(t, `^(auto|var\(--(s2|thin)\))$`, value, "%s: a height that text may outgrow", r.selector)
			case "left", "right", "margin-left", "margin-right", "padding-left", "padding-right", "border-left", "border-right", "float":
				t.Errorf("%s in %s: wrong from right to left", name, r.selector)
			}
			if strings.HasPrefix(name, "padding") || strings.HasPrefix(name, "margin") || strings.HasSuffix(name, "gap") {
				for _, used := range token.FindAllStringSubmatch(value, -1) {
					assert.Contains(t, append([]string{"thin", "thick", "target"}, spaces...), used[1], "%s in %s", name, r.selector)
				}
			}
		}
	}
}

// pair is a text on a ground.
type pair struct{ text, ground string }

// colourOf gives the token of a colour, if it is one.
func colourOf(value string) string {
	for _, m := range token.FindAllStringSubmatch(value, -1) {
		if slices.Contains(colours, m[1]) {
			return m[1]
		}
	}
	return ""
}

// groundOf gives the token that a rule lays under its text.
func groundOf(r rule) string {
	for _, name := range []string{"background", "background-color"} {
		value := r.set[name]
		if i := strings.LastIndex(value, "var(--"); i >= 0 { // after a gradient stands the ground
			if c := colourOf(value[i:]); c != "" {
				return c
			}
		}
	}
	return ""
}

// pairs lists every text on every ground that it may stand on: a rule with both
// makes its own pair; any other text may stand on any ground that doesn't change
// the colour of its text.
func pairs(t *testing.T) (list []pair, grounds []string) {
	texts := []string{}
	for _, r := range rules(t) {
		text, ground := colourOf(r.set["color"]), groundOf(r)
		if strings.Contains(r.selector, "text") || strings.Contains(r.selector, ".letter") || strings.Contains(r.selector, ".aside") {
			text = max(text, colourOf(r.set["fill"])) // of pictures
		}
		switch {
		case text == "sheet": // only on a dark ground, checked where both are set
			if ground == "" {
				require.Equal(t, ".picture text.on4", r.selector, "text that is light by day needs its ground in the same rule")
				ground = "lead"
			}
			list = append(list, pair{text, ground})
		case text != "":
			texts = append(texts, text)
		}
		if ground != "" && text != "sheet" {
			grounds = append(grounds, ground)
		}
	}
	for _, g := range slices.Compact(slices.Sorted(slices.Values(grounds))) {
		if g == "lead" { // the notches under the top bear no text
			continue
		}
		for _, text := range slices.Compact(slices.Sorted(slices.Values(texts))) {
			list = append(list, pair{text, g})
		}
	}
	for _, tone := range []string{"sheet", "paper", "putty", "line"} { // squares of the map
		list = append(list, pair{"ink", tone})
	}
	return list, grounds
}

func TestContrast(t *testing.T) {
	list, grounds := pairs(t)
	require.Contains(t, list, pair{"ink", "paper"})
	require.Contains(t, list, pair{"pencil", "tape"})
	require.Contains(t, list, pair{"sheet", "lead"})
	require.Subset(t, grounds, []string{"paper", "sheet", "putty", "tape"})
	for _, theme := range []string{"light", "dark"} {
		tokens := themes(t)[theme]
		for _, p := range list {
			least := 4.5
			if p.text == "ink" { // figures are always in ink
				least = 7
			}
			assert.GreaterOrEqual(t, contrast(t, tokens[p.text], tokens[p.ground]), least, "%s: %s on %s", theme, p.text, p.ground)
		}
	}
}

// control reports whether a selector is that of something to tap or type in.
var control = regexp.MustCompile(`\b(?:input|select|textarea|button)\b|\.(?:main|quiet|tool|switch|tab|unit|entry|figure|chip|nudge)\b|aria-`)

func TestBordersOfControls(t *testing.T) {
	_, grounds := pairs(t)
	seen := 0
	for _, r := range rules(t) {
		if !control.MatchString(r.selector) {
			continue
		}
		for name, value := range r.set {
			edge := colourOf(value)
			if edge == "" || !strings.HasPrefix(name, "border") && !strings.HasPrefix(name, "outline") {
				continue
			}
			for part := range strings.SplitSeq(r.selector, ", ") {
				if control.MatchString(part) {
					seen++
				}
			}
			for _, theme := range []string{"light", "dark"} {
				tokens := themes(t)[theme]
				for _, g := range grounds {
					if g != "lead" {
						assert.GreaterOrEqual(t, contrast(t, tokens[edge], tokens[g]), 3., "%s: border %s on %s in %s", theme, edge, g, r.selector)
					}
				}
			}
		}
	}
	assert.GreaterOrEqual(t, seen, 9)
}

func TestContrastIsComputedRight(t *testing.T) {
	assert.InDelta(t, 21, contrast(t, "#000000", "#ffffff"), 1e-9)
	assert.InDelta(t, 1, contrast(t, "#808080", "#808080"), 1e-9)
	// The smallest grey on white that passes 4.5, widely known; from memory.
	assert.GreaterOrEqual(t, contrast(t, "#767676", "#ffffff"), 4.5)
	assert.Less(t, contrast(t, "#777777", "#ffffff"), 4.5)
}

// contrast is the contrast ratio (L1 + 0.05) ÷ (L2 + 0.05), L1 the lighter's
// relative luminance. Source: WCAG 2.2, definitions of contrast ratio and of
// relative luminance.
func contrast(t *testing.T, a, b string) float64 {
	la, lb := luminance(t, a), luminance(t, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(t *testing.T, hex string) float64 {
	require.Regexp(t, `^#[0-9a-f]{6}$`, hex)
	sum := 0.
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}

func TestPaperHidesWhatIsOfNoUseOnIt(t *testing.T) {
	var hidden, shown string
	for _, r := range rules(t) {
		if r.about == "@media print" {
			if r.set["display"] == "none" {
				hidden += r.selector + ", "
			} else {
				shown += r.selector + ", "
			}
		}
	}
	for _, class := range []string{".bar", ".tool", ".sheet", ".act", ".main", ".quiet", ".switches", ".itemtools", ".figure::after"} {
		assert.Contains(t, hidden, class)
	}
	for _, class := range []string{".paper", ".shedcard"} {
		assert.Contains(t, shown, class)
	}
}

// The program leaves what a sheet hides unmade: it has to know in which windows the style hides it.
func TestTheProgramKnowsWhenASheetHidesItsScreen(t *testing.T) {
	source, err := os.ReadFile("../wasm/main_js.go")
	require.NoError(t, err)
	known := regexp.MustCompile(`oneColumn = "(.*)"`).FindSubmatch(source)
	require.NotNil(t, known)
	var hidden []string
	for _, r := range rules(t) {
		if strings.Contains(r.selector, ":has(> .sheet:not(:empty)) > :is(.top, .screen)") && r.set["display"] == "none" {
			hidden = append(hidden, r.about)
		}
	}
	assert.Equal(t, []string{"@media " + string(known[1])}, hidden)
}
