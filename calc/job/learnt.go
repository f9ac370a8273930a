package job

import (
	"math"
	"strconv"
	"strings"

	"shedreckoner/calc/material"
)

// Learnt is what the builder adopted from the log for a method and card: the mean
// and standard deviation of ln(used ÷ planned), and the number of entries behind
// them.
type Learnt struct {
	Method   *material.Method
	Card     string
	Mean, SD float64
	Entries  int
}

// LearntPath is the path of what was adopted for a method and card.
func LearntPath(method, card string) string { return "learn." + method + "." + card }

// LearntText writes what was adopted. Six digits are more than any log gives.
func LearntText(mean, sd float64, entries int) string {
	number := func(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }
	return number(mean) + " " + number(sd) + " " + strconv.Itoa(entries)
}

// The limits of what can be adopted: a hand five times off is a slip of the unit.
const mostLearntMean, mostLearntSD = 1.61, 1.0

// learnt reads what was adopted. A line that can't be read is ignored, and shown as
// not adopted.
func (r *reader) learnt(string) []Learnt {
	var list []Learnt
	for _, line := range r.doc.Under("learn") {
		names, parts := strings.Split(line.Path, "."), strings.Fields(line.Text)
		if len(names) != 3 || len(parts) != 3 {
			continue
		}
		method, known := material.FindMethod(names[1])
		mean, err1 := strconv.ParseFloat(parts[0], 64)
		sd, err2 := strconv.ParseFloat(parts[1], 64)
		n, err3 := strconv.Atoi(parts[2])
		if known && err1 == nil && err2 == nil && err3 == nil && math.Abs(mean) <= mostLearntMean && sd > 0 && sd <= mostLearntSD && n > 0 && n <= MaxFinished+cups.Max {
			list = append(list, Learnt{method, names[2], mean, sd, n})
		}
	}
	return list
}

// LearntOf finds what was adopted for a method and card; nil: nothing.
func (j *Job) LearntOf(method *material.Method, card string) *Learnt {
	for i := range j.Learnt {
		if j.Learnt[i].Method == method && j.Learnt[i].Card == card {
			return &j.Learnt[i]
		}
	}
	return nil
}
