package job_test

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/calc/job"
)

func TestEachFieldOfAPartOfItsOwnIsReadIntoItsPlace(t *testing.T) {
	for block := range strings.SplitSeq(strings.TrimSpace(more), "\n\n") {
		head, rows, _ := strings.Cut(block, "\n")
		cells := strings.Split(head, " | ")
		before := job.Document{}
		if len(cells) == 3 {
			for said := range strings.SplitSeq(cells[2], "; ") {
				key, text, _ := strings.Cut(said, " = ")
				before = before.Set(cells[0]+"."+key, text)
			}
		}
		for row := range strings.SplitSeq(rows, "\n") {
			want := strings.Split(row, " | ")
			require.Len(t, want, 3, row)
			key, text, _ := strings.Cut(want[0], " = ")
			changed, value := placeIn(t, before, cells[0], cells[1], key, text)
			assert.Equal(t, want[1:], []string{changed, value}, "%s.%s", cells[0], key)
		}
	}
}

func TestEachFieldIsReadIntoItsOwnPlace(t *testing.T) {
	for block := range strings.SplitSeq(strings.TrimSpace(places), "\n\n") {
		head, rows, _ := strings.Cut(block, "\n")
		item, part, _ := strings.Cut(head, " | ")
		seen := map[string]bool{}
		for row := range strings.SplitSeq(rows, "\n") {
			cells := strings.Split(row, " | ")
			if len(cells) < 3 {
				continue
			}
			key, text, _ := strings.Cut(cells[0], " = ")
			seen[key] = true
			changed, value := placeOf(t, item, part, key, text)
			assert.Equal(t, cells[1], changed, "%s.%s", item, key)
			assert.Equal(t, cells[2], value, "%s.%s", item, key)
		}
		list, _, _ := strings.Cut(item, ".")
		for _, f := range job.ListAt(list).Fields {
			if f.Kind != job.Choice && !strings.HasPrefix(f.Key, "flow-") && !strings.HasSuffix(f.Key, "-was") && f.Key != "sun" && f.Key != "syringe-step" && f.Key != "drops" && f.Key != "note" {
				assert.True(t, seen[f.Key], "%s.%s isn't in the table", list, f.Key)
			}
		}
	}
}

// placeOf types one text and gives the one place of the part that it changed.
func placeOf(t *testing.T, item, part, key, text string) (changed, value string) {
	t.Helper()
	return placeIn(t, job.Document{}, item, part, key, text)
}

func placeIn(t *testing.T, before job.Document, item, part, key, text string) (changed, value string) {
	t.Helper()
	list, id, _ := strings.Cut(item, ".")
	if of, step, isStep := strings.Cut(id, ".step."); isStep {
		before, id = before.Set(list+"."+of+".step", step), of
	}
	empty := before.Set(list, id).Set(item+".unknown", "x")
	one := func(d job.Document) reflect.Value {
		read, problems := job.Read(d)
		require.Empty(t, problems, "%s.%s = %s", item, key, text)
		v := reflect.ValueOf(read).FieldByName(part)
		if v.Kind() == reflect.Slice {
			require.Equal(t, 1, v.Len())
			v = reflect.Indirect(v.Index(0))
		}
		return v
	}
	var walk func(was, is reflect.Value, in string)
	walk = func(was, is reflect.Value, in string) {
		for i := range was.NumField() {
			if reflect.DeepEqual(was.Field(i).Interface(), is.Field(i).Interface()) {
				continue
			}
			f, name := is.Field(i), in+was.Type().Field(i).Name
			if f.Kind() == reflect.Slice && f.Len() == 1 && was.Field(i).Len() == 1 && f.Index(0).Kind() == reflect.Struct {
				walk(was.Field(i).Index(0), f.Index(0), name+".")
				continue
			}
			if f.Kind() == reflect.Struct {
				if f = f.FieldByName("Value"); !f.IsValid() {
					walk(was.Field(i), is.Field(i), name+".")
					continue
				}
			}
			require.Empty(t, changed, "%s.%s changes two places", item, key)
			changed, value = name, fmt.Sprint(f.Interface())
			if f.CanFloat() {
				value = strconv.FormatFloat(f.Float(), 'g', 9, 64)
			}
		}
	}
	walk(one(empty), one(empty.Set(item+"."+key, text)), "")
	return changed, value
}
