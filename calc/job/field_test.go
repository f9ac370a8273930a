package job_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
	"shedreckoner/calc/job/jobtest"
	"shedreckoner/calc/surface"
	"shedreckoner/calc/unit"
)

// everyField calls f with every field that there is and a path to it.
func everyField(f func(path string, l *job.List, field *job.Field)) {
	var walk func(l *job.List, prefix string)
	walk = func(l *job.List, prefix string) {
		for _, field := range l.Fields {
			f(prefix+field.Key, l, field)
		}
		for _, inner := range l.Lists {
			walk(inner, prefix+inner.Key+".3.")
		}
	}
	walk(job.Root, "")
}

func TestEveryFieldAndListIsFoundByItsPath(t *testing.T) {
	seen := map[string]bool{}
	everyField(func(path string, l *job.List, field *job.Field) {
		assert.Same(t, field, job.FieldAt(path), path)
		assert.False(t, seen[path], "%s stands twice", path)
		seen[path] = true
		if under, _ := job.Split(path); under != "" {
			list, _ := job.Split(under)
			assert.Same(t, l, job.ListAt(list), list)
		}
		assert.Nil(t, job.ListAt(path), path)
		assert.NotEmpty(t, field.Name, path)
	})
	for _, path := range []string{"", "surface", "surface.1", "surface.1.nothing", "nothing.1.name", "surface.1.cutout.1", ".", "..", "surface..", "name.name"} {
		assert.Nil(t, job.FieldAt(path), path)
	}
	for _, path := range []string{"", "name", "surface.1", "surface.1.name", "surface.1.nothing", "..."} {
		assert.Nil(t, job.ListAt(path), path)
	}
}

// What is saved must mean one thing whatever shape was chosen when it was typed.
func TestAKeyMeansOneThingInAllShapes(t *testing.T) {
	for _, path := range []string{"surface.1.", "surface.1.cutout.1."} {
		for _, shape := range surface.Shapes {
			for _, d := range shape.Dims {
				assertSame(t, job.FieldAt(path+d.Key), job.DimField(d), shape.Key)
			}
			if shape.Rows == nil {
				continue
			}
			for _, d := range shape.Rows.Columns {
				assertSame(t, job.FieldAt(path+shape.Rows.Key+".1."+d.Key), job.DimField(d), shape.Key)
			}
		}
	}
}

func assertSame(t *testing.T, known, own *job.Field, shape string) {
	t.Helper()
	require.NotNil(t, known, "%s of %s", own.Key, shape)
	assert.Equal(t, known.Kind, own.Kind, "%s of %s", own.Key, shape)
	assert.Equal(t, known.Measure, own.Measure, "%s of %s", own.Key, shape)
	assert.Equal(t, known.Options, own.Options, "%s of %s", own.Key, shape)
}

func TestFieldsAreWhole(t *testing.T) {
	everyField(func(path string, _ *job.List, f *job.Field) {
		assert.NotContains(t, f.Key, ".", path)
		assert.NotContains(t, f.Key, " ", path)
		switch f.Kind {
		case job.Quantity, job.MassOrVolume:
			require.NotZero(t, f.Measure, path)
			assert.Less(t, f.Min, f.Max, path)
		case job.Whole, job.Money, job.Size, job.Clock, job.Moment:
			assert.Less(t, f.Min, f.Max, path)
		case job.Choice:
			assert.NotEmpty(t, f.Options, path)
			seen := map[string]bool{}
			for _, o := range f.Options {
				assert.False(t, seen[o.Key], "%s: %s twice", path, o.Key)
				seen[o.Key] = true
				assert.NotEmpty(t, o.Name, path)
			}
		}
	})
}

// Both ends of a range are taken in every scale, a hair beyond them is refused.
func TestRangesAreClosed(t *testing.T) {
	var units job.Units
	everyField(func(path string, _ *job.List, f *job.Field) {
		if f.Kind != job.Quantity {
			return
		}
		for _, scale := range f.Measure.Scales() {
			for _, n := range []float64{f.Min + 1e-9*(f.Max-f.Min), f.Max - 1e-9*(f.Max-f.Min)} {
				_, err := f.Read(exact(scale.From(n))+" "+scale.Symbol(), units)
				assert.NoError(t, err, "%s: %v %s", path, scale.From(n), scale.Symbol())
			}
			span := f.Max - f.Min
			for _, n := range []float64{f.Min - 0.01*span, f.Max + 0.01*span} {
				_, err := f.Read(exact(scale.From(n))+" "+scale.Symbol(), units)
				var outside *job.RangeError
				assert.True(t, errors.As(err, &outside), "%s: %v %s: %v", path, scale.From(n), scale.Symbol(), err)
			}
		}
	})
}

// exact writes a number with as many digits as a field takes.
func exact(n float64) string {
	text := decimal.NewFromFloat(n).Round(12).String()
	return text[:min(len(text), 16)]
}

func TestAbsurdFiguresAreRefused(t *testing.T) {
	var units job.Units
	for _, c := range []struct{ path, text string }{
		{"surface.1.length", "40 km"}, {"surface.1.length", "40000 m"}, {"surface.1.length", "-1 m"}, {"surface.1.width", "0"},
		{"buildup.1.step.1.film", "4 m"}, {"buildup.1.step.1.film", "0"}, {"buildup.1.step.1.thinner", "60 %"}, {"buildup.1.step.1.coats", "0"},
		{"buildup.1.step.1.coats", "1.5"}, {"card.gelcoat.pack.1.size", "0"}, {"card.gelcoat.pack.1.size", "-1"}, {"card.gelcoat.pack.1.price", "-0.01"},
		{"card.gelcoat.density", "12.5"}, {"surface.1.length", "1,500"}, {"surface.1.length", "twelve"}, {"surface.1.length", "5 kg"}, {"surface.1.shape", "blob"},
		{"card.gelcoat.stock", "5 gal"}, {"bench.now.product-temp", "200"}, {"day.today.sunrise", "25:00"}, {"name", strings.Repeat("x", job.MaxWords+1)},
	} {
		_, err := job.FieldAt(c.path).Read(c.text, units)
		assert.Error(t, err, "%s = %q", c.path, c.text)
	}
}

func TestBareNumbersKeepTheirMeaning(t *testing.T) {
	d := job.Document{}.Set("surface", "1").Set("surface.1.length", "450").Set("surface.1.width", "1,5 m").Set("surface.1.count", "2").
		Set("surface.1.height", "1,500").Set(job.Real("surface.1.length"), "450").Set("card.gelcoat.pack.1.size", "5")
	in := job.SetUnit(d, unit.Sizes, unit.InInch)
	for path, text := range map[string]string{
		"surface.1.length": "450 mm", "surface.1.width": "1,5 m", "surface.1.count": "2", "surface.1.height": "1,500",
		"card.gelcoat.pack.1.size": "5", job.Real("surface.1.length"): "450 mm", "units.size": "in",
	} {
		assert.Equal(t, text, in.Get(path), path)
	}
	assert.Equal(t, in, job.SetUnit(in, unit.Sizes, unit.InInch), "the same unit again changes nothing")
	assert.Equal(t, "450", d.Get("surface.1.length"))
}

// Going to US customary units and back keeps the value of every figure.
func TestUnitsBackAndForthKeepEveryValue(t *testing.T) {
	for seed := range uint64(25) {
		d := jobtest.New(seed).Document()
		us := job.SetSystem(d, true)
		back := job.SetSystem(us, false)
		for _, line := range d.Lines() {
			f := job.FieldAt(line.Path)
			if f == nil {
				continue
			}
			want, errWant := f.Read(line.Text, job.ReadUnits(d))
			for _, other := range []job.Document{us, back} {
				got, err := f.Read(other.Get(line.Path), job.ReadUnits(other))
				require.Equal(t, errWant == nil, err == nil, "%s = %q: %v, %v", line.Path, line.Text, errWant, err)
				require.Equal(t, want, got, "%s = %q", line.Path, line.Text)
			}
		}
		assert.Equal(t, back, job.SetSystem(back, false))
	}
}

// A fixed ratio is typed as the tin prints it.
func TestRatiosAreReadAsTheTinPrintsThem(t *testing.T) {
	f := job.FieldAt("card.primer.ratio-mass")
	for text, want := range map[string]float64{"100:33": 100. / 33, "2.2 : 1": 2.2, "2,2:1": 2.2, "100/33": 100. / 33, "5": 5, "1½:1": 1.5} {
		got, err := f.Read(text, job.Units{})
		require.NoError(t, err, text)
		assert.InEpsilon(t, want, got, 1e-12, text)
	}
	for _, text := range []string{"100:", ":33", "2:0", "2:1:1", "2:-1", "1000:1", "2:1 kg"} {
		_, err := f.Read(text, job.Units{})
		assert.Error(t, err, text)
	}
	_, err := job.FieldAt("surface.1.count").Read("4:2", job.Units{})
	assert.Error(t, err, "a count is no ratio")
}

func TestPackSizesAreExact(t *testing.T) {
	for text, want := range map[string]struct {
		amount string
		scale  unit.Scale
	}{
		"5": {"5", unit.NoScale}, "0.1": {"0.1", unit.NoScale}, "2.5 kg": {"2.5", unit.InKilogram}, "750g": {"750", unit.InGram}, "1 US gal": {"1", unit.InUSGallon},
		"1 us gallon": {"1", unit.InUSGallon}, "4 imp gal": {"4", unit.InImperialGallon}, "0,75 L": {"0.75", unit.InLitre}, "16 oz": {"16", unit.InOunce},
		"16 US fl oz": {"16", unit.InUSFluidOunce}, "500 mL": {"500", unit.InMillilitre}, " 50 m ": {"50", unit.InMetre}, "12 500 g": {"12500", unit.InGram},
		"2 imp qt": {"2", unit.InImperialQuart}, "100000.000001": {"100000.000001", unit.NoScale}, "164 ft": {"164", unit.InFoot},
	} {
		size, err := job.ReadSize(text)
		require.NoError(t, err, text)
		assert.True(t, decimal.RequireFromString(want.amount).Equal(size.Amount), "%s: %s", text, size.Amount)
		assert.Equal(t, want.scale, size.Scale, text)
	}
	for _, text := range []string{"", "kg", "1,500 kg", "1 gal", "5 fl oz", "1e3", "3/4 L", "5 kg 3", "x", "5 °C", "5 m²"} {
		_, err := job.ReadSize(text)
		var read *unit.ReadError
		assert.True(t, errors.As(err, &read), "%q: %v", text, err)
	}
}

// A size in a unit that the card can't be counted in is refused, not taken for nothing.
func TestAPackOfGelCoatIsNotMeasuredInMetres(t *testing.T) {
	d := job.Document{}.Set("card.gelcoat.pack.1.size", "5 m").Set("card.gelcoat.stock", "2 ft").Set("card.tape.pack.1.size", "2 kg").
		Set("card.styrene.pack.1.size", "1 kg").Set("card.gelcoat.pack.2.size", "1 US gal")
	_, problems := job.Read(d)
	var paths []string
	for _, p := range problems {
		paths = append(paths, p.Path)
	}
	assert.ElementsMatch(t, []string{"card.gelcoat.pack.1.size", "card.gelcoat.stock", "card.tape.pack.1.size"}, paths)
}

func FuzzRead(f *testing.F) {
	for seed := range uint64(8) {
		r := jobtest.New(seed)
		r.Junk = 0.3
		f.Add(job.Save(r.Document(), 1), "surface.1.length", "4 m")
	}
	f.Fuzz(func(t *testing.T, saved, path, text string) {
		_, body, _ := strings.Cut(saved, "\n\n")
		d := job.Document{}.Set(path, text)
		for line := range strings.Lines(body) {
			if p, text, found := strings.Cut(strings.TrimSuffix(line, "\n"), " = "); found {
				d = d.Set(p, text)
			}
		}
		j, problems := job.Read(d)
		for _, p := range problems {
			if d.Get(p.Path) == "" {
				t.Fatalf("a problem at %s, where nothing is typed: %v", p.Path, p.Err)
			}
		}
		for _, s := range j.Surfaces {
			if math.IsNaN(float64(s.Part.Count.Value)) {
				t.Fatal("not a number of surfaces")
			}
		}
	})
}

func TestReadingLosesNothing(t *testing.T) {
	for seed := range uint64(25) {
		r := jobtest.New(seed)
		r.Junk = 0.3
		d := r.Document()
		before := d.Lines()
		j, _ := job.Read(d)
		assert.Equal(t, before, d.Lines())
		assert.Len(t, j.Surfaces, len(d.Items("surface")))
		assert.Len(t, j.Buildups, len(d.Items("buildup")))
	}
}

func BenchmarkRead(b *testing.B) {
	d := jobtest.New(1).Document()
	for i := range 500 {
		item := "surface." + string(rune('a'+i%26)) + strings.Repeat("x", i/26)
		d = d.Set("surface", d.Get("surface")+" "+strings.TrimPrefix(item, "surface.")).Set(item+".length", "2 m").Set(item+".width", "1 m")
	}
	b.ResetTimer()
	for range b.N {
		job.Read(d)
	}
}

func BenchmarkSave(b *testing.B) {
	d := jobtest.New(1).Document()
	for range b.N {
		job.Save(d, 1)
	}
}
