package surface

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/unit"
)

// Every choice of faces of a box, inside and outside, by axes: a face stands across
// one axis and is as large as the other two; two faces across different axes meet
// along the third.
func TestEveryChoiceOfFaces(t *testing.T) {
	sizes := [3]float64{5, 3, 2} // length, width, height
	axis := map[string]int{"left": 0, "right": 0, "front": 1, "back": 1, "top": 2, "bottom": 2}
	names := keys(box.Faces)
	require.Len(t, names, 6)
	for _, side := range []string{"outside", "inside"} {
		for set := 1; set < 1<<len(names); set++ {
			var faces []string
			area, edge := 0.0, 0.0
			for i, one := range names {
				has := set>>i&1 == 1
				if has {
					faces = append(faces, one)
					area += sizes[(axis[one]+1)%3] * sizes[(axis[one]+2)%3]
				}
				for j := i + 1; j < len(names); j++ {
					other := names[j]
					if axis[one] == axis[other] {
						continue
					}
					if hasOther := set>>j&1 == 1; has != hasOther || has && side == "outside" {
						edge += sizes[3-axis[one]-axis[other]]
					}
				}
			}
			m, err := box.Measure(Input{Lengths: lengths(L{"length": sizes[0], "width": sizes[1], "height": sizes[2]}), Faces: faces, Choices: map[string]string{"side": side}})
			require.NoError(t, err, faces)
			assert.InDelta(t, area, float64(m.Area.Value), 1e-12, "%s: %v", side, faces)
			assert.InDelta(t, edge, unit.InMetre.From(float64(m.Edge.Value)), 1e-12, "%s: %v", side, faces)
			assert.Equal(t, side == "inside", len(m.Notes) > 0)
		}
	}
}
