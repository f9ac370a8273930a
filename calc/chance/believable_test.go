package chance_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/chance"
)

// A deck of 14 m² sprayed in two rounds, the second wet-sanded and polished, as a
// builder would shop for it: a day's work takes no more than eight pairs of gloves,
// a round being one day at the gun and the sanding days of eight hours; and no more
// litres of cleaning solvent are bought than a tenth of the gel coat's kilograms.
// Nobody would place an order of a pair a cup.
// Source: common practice.
func TestGlovesAndSolventAreWhatADayTakes(t *testing.T) {
	const rounds, dailyPairs = 2, 8
	sprayed := []string{"surface.1.length = 7 m", "surface.1.width = 2 m", "buildup.1.step.1.kind = coat", "buildup.1.step.1.card = gelcoat",
		"buildup.1.step.1.method = gravity-gun", "buildup.1.step.1.film = 500 µm", "buildup.1.step.1.goes = 2", "buildup.1.step.1.go-takes = 100 µm", "buildup.1.step.1.release = film"}
	p := planned(t, append(sprayed, "buildup.1.step = 1")...)
	gloves := line(p, "gloves").Need.InexactFloat64()
	assert.LessOrEqual(t, gloves, float64(rounds*dailyPairs))
	assert.GreaterOrEqual(t, gloves, float64(rounds), "a pair a round at least")
	assert.LessOrEqual(t, line(p, "acetone").Need.InexactFloat64(), line(p, "gelcoat").Need.InexactFloat64()/10)

	wet := append(sprayed, "buildup.1.step.2.kind = sand", "buildup.1.step.2.by = grades", "buildup.1.step.2.first = P400", "buildup.1.step.2.last = P1500",
		"buildup.1.step.2.wet-from = P400", "buildup.1.step.3.kind = polish", "buildup.1.step.3.card = compound", "buildup.1.step = 1 2 3")
	p = planned(t, wet...)
	days := 6 * 14 / 1.4 / 8 // six grades of 14 m² at 1.4 m² an hour
	more := line(p, "gloves").Need.InexactFloat64() - gloves
	assert.Greater(t, more, 0.)
	assert.LessOrEqual(t, more, days*dailyPairs)
	for _, l := range chance.OrderOf(&p).Lines {
		require.NoError(t, l.Err)
	}
	assert.LessOrEqual(t, line(p, "acetone").Need.InexactFloat64(), line(p, "gelcoat").Need.InexactFloat64()/10)
}
