package view_test

import (
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/cure"
	"shedreckoner/calc/unit"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
	"shedreckoner/wasm/words"
)

// A remedy that is named says what to do and what it brings: another hour says which,
// a temperature or a smaller cup how much, and each what it can spoil.
func TestARemedySaysHowFarAndWhatItBrings(t *testing.T) {
	start, _ := page.Start(nil, noon)
	for path, text := range map[string]string{"day.today.low": "14", "day.today.high": "34", "day.today.sunrise": "5:00", "day.today.sun": "sun", "bench.now.scale-step": "0.1 g", "bench.now.amount": "250 g"} {
		start = do(start, "set", path, text)
	}
	row := regexp.MustCompile(`<li>.*?</li>`)
	degrees := regexp.MustCompile(`To ([\d.]+)\D{0,3}°C`)
	seen := map[cure.Remedy]bool{}
	for _, c := range [][3]string{{"36", "33", "200 g"}, {"30", "30", "300 g"}, {"36", "32", "200 g"}, {"12", "10", "200 g"}, {"16", "25", "200 g"}, {"31", "31", "250 g"}} {
		s := do(start, "set", "bench.now.surface-temp", c[0])
		s = do(s, "set", "bench.now.product-temp", c[1])
		s = do(s, "set", "bench.now.amount", c[2])
		offers := s.Bench().Offers()
		s = do(do(s, "go", "cup", ""), "sheet", "remedies", "")
		rows := row.FindAllString(regexp.MustCompile(`(?s)<ul class="remedies">.*?</ul>`).FindString(view.Page(s).String()), -1)
		require.Len(t, rows, len(offers), c)
		for i, o := range offers {
			seen[o.Remedy] = true
			assert.Contains(t, rows[i], words.RemedyWords[o.Remedy])
			assert.Contains(t, rows[i], words.Risk(o.Risk))
			if o.Remedy == cure.OtherHour {
				assert.Contains(t, rows[i], "At "+words.Hour(o.Hour)+".")
			}
			if o.Target.Step != nil {
				shown := degrees.FindStringSubmatch(rows[i])
				require.NotNil(t, shown, rows[i])
				n, err := strconv.ParseFloat(shown[1], 64)
				require.NoError(t, err)
				assert.InDelta(t, unit.InCelsius.From(float64(o.Target.Value)), n, 0.06)
			}
			if o.Mass.Step != nil {
				assert.Contains(t, rows[i], fmt.Sprintf("To %.0f", unit.InGram.From(float64(o.Mass.Value))))
			}
			assert.Equal(t, o.Opens, regexp.MustCompile(words.RemedyOpens).MatchString(rows[i]), rows[i])
			assert.Equal(t, !o.Opens && o.Minutes.Step != nil, regexp.MustCompile(`Gains \d`).MatchString(rows[i]), rows[i])
		}
	}
	for r := cure.CoolProduct; r <= cure.WarmShed; r++ {
		if r != cure.SlowerPeroxide {
			assert.True(t, seen[r], "%s was never offered", words.RemedyWords[r])
		}
	}
}
