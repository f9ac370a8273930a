package view_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
	"shedreckoner/wasm/view"
)

// A comb is answered where it is read: what it cures to, and how that stands to the planned film of one coat; one that is short
// even by its first dry tooth asks, and isn't told as if it held.
func TestACombIsAnsweredByThePlan(t *testing.T) {
	const step, row = "buildup.1.step.3", "buildup.1.step.3.comb.1"
	planned := int(unit.InMicrometre.From(float64(fairState(t).Plan.Buildups()[0].Steps[2].Coat.WetEach.Value)) + 0.5)
	for _, c := range []struct {
		wet, dry int // beside the plan
		says, is string
	}{
		{-50, 50, "; as planned.", "holds"},
		{-90, 10, "; about 40 µm wet short of the plan.", "holds"},
		{-110, -10, "; about 60 µm wet short of the plan.", "asks"},
		{-10, 90, "; about 40 µm wet over the plan.", "holds"},
	} {
		s := fairState(t)
		s = do(do(s, "set", row+".last-wet", fmt.Sprint(planned+c.wet)), "set", row+".first-dry", fmt.Sprint(planned+c.dry))
		html := strings.ReplaceAll(view.Page(opened(s, "sheet "+step+".readings")).String(), "\u00a0", " ")
		_, said, found := strings.Cut(html, `id="comb-`+row+`"`)
		require.True(t, found)
		said, _, _ = strings.Cut(said, "</p>")
		assert.Contains(t, said, c.says, "%v", c)
		assert.Contains(t, said, `data-is="`+c.is+`"`, "%v", c)
		assert.Contains(t, said, "Cures to ")
	}
}
