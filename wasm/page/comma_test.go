package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/wasm/page"
	"shedreckoner/wasm/view"
)

func TestAJobBegunOnAPhoneThatWritesCommas(t *testing.T) {
	s, _ := start(t, nil)
	s = do(do(s, "locale", "", ","), "add", "surface", "")
	require.True(t, job.HasComma(s.Doc()))
	s = do(do(do(s, "set", "surface.1.length", "1,5 m"), "set", "surface.1.width", "700"), "set", "surface.1.name", "Tin 3.2 & more")
	html := plain(view.Page(s).String())
	assert.Contains(t, html, ">1,05 m²<")
	assert.NotContains(t, html, "1.05")
	assert.Contains(t, html, "Tin 3.2 &amp; more", "a name stays as it was typed")
	s = do(s, "set", "surface.1.length", "1.500")
	assert.Contains(t, view.Page(s).String(), "1.500 can be read two ways. Type 1,5 or 1500.")
	assert.Equal(t, "1.500", s.Doc().Get("surface.1.length"))
	undone := do(do(do(do(do(s, "undo", "", ""), "undo", "", ""), "undo", "", ""), "undo", "", ""), "undo", "", "")
	assert.Empty(t, undone.Doc().Lines())

	// elsewhere the job means what it meant, and the builder may choose
	other, _ := start(t, map[string]string{page.Prefix + "job.a": job.Save(s.Doc(), 1)})
	assert.True(t, other.Fresh.Job.Units.Comma)
	other = do(do(other, "set", "surface.1.length", "1,5 m"), "decimal", "", "point")
	assert.Contains(t, plain(view.Page(other).String()), ">1.05 m²<")

	// and a job begun with points goes on with points
	point, _ := start(t, nil)
	point = do(do(do(point, "add", "surface", ""), "locale", "", ","), "set", "surface.1.length", "1.500 m")
	assert.False(t, job.HasComma(point.Doc()))
	point = do(point, "decimal", "", "comma")
	assert.Equal(t, "1.5000 m", point.Doc().Get("surface.1.length"))
}
