package job

import (
	"fmt"
	"math"
	"slices"

	"shedreckoner/calc/unit"
)

// Kind is how a field's text is read.
type Kind int

// The kinds of field.
const (
	Quantity     Kind = iota // a number with a unit
	Whole                    // a whole number
	Words                    // any text
	Choice                   // one of Options
	Money                    // an exact decimal, not negative
	Size                     // what is in a pack: an exact decimal above zero, by the card's basis
	MassOrVolume             // an amount that is weighed or measured: Measure is that of its mass
	Clock                    // a time of day: "6:30"
	Moment                   // seconds since 1970, written by the page's clock
	Checked                  // a text that its own Check reads
	Pasted                   // a long text, of Max bytes at most
)

// Field is one thing that can be typed.
type Field struct {
	Key, Name string
	Kind      Kind
	Measure   unit.Measure                       // of a Quantity
	Min, Max  float64                            // SI, closed; outside: refused
	Options   []Option                           // of a Choice; the first is the default
	Optional  bool                               // may be left empty; otherwise the sum waits for it
	Check     func(text string) (float64, error) // of a Checked
	Example   string                             // of a Checked: a text that it takes
}

// Option is one answer of a choice.
type Option struct{ Key, Name string }

// RangeError says that a figure is outside what its field takes.
type RangeError struct {
	Field *Field
	Value float64 // SI
}

// Error names the field and its range.
func (e *RangeError) Error() string {
	scale := e.Field.scale()
	return fmt.Sprintf("job: %s = %s is outside %s to %s", e.Field.Key, unit.Write(e.Value, scale, 6),
		unit.Write(e.Field.Min, scale, 6), unit.Write(e.Field.Max, scale, 6))
}

func (f *Field) scale() unit.Scale {
	if f.Measure == unit.NoMeasure {
		return unit.InPure
	}
	return f.Measure.Scales()[0]
}

// OptionError says that a choice has no such answer.
type OptionError struct {
	Field *Field
	Text  string
}

// Error names the field and the text.
func (e *OptionError) Error() string {
	return fmt.Sprintf("job: %s has no option %q", e.Field.Key, e.Text)
}

// WholeError says that a number should be whole.
type WholeError struct{ Text string }

// Error names the text.
func (e *WholeError) Error() string { return fmt.Sprintf("job: %q is not a whole number", e.Text) }

// MaxWords is the longest text of a name or note, in bytes.
const MaxWords = 400

// WordsError says that a text is too long.
type WordsError struct{ Length, Most int }

// Error names the length.
func (e *WordsError) Error() string {
	return fmt.Sprintf("job: %d bytes of text, more than %d", e.Length, e.Most)
}

func checkLength(text string, most int) error {
	if len(text) > most {
		return &WordsError{len(text), most}
	}
	return nil
}

// Read reads a field's text in the units: a number in SI base units, or the index
// of the chosen option. Words give 0; they are only checked.
// Errors: *unit.ReadError, *RangeError, *OptionError, *WholeError, *WordsError.
func (f *Field) Read(text string, units Units) (float64, error) {
	if units.Comma && f.isNumber() {
		if err := unit.CheckComma(text); err != nil {
			return 0, err
		}
	}
	switch f.Kind {
	case Words:
		return 0, checkLength(text, MaxWords)
	case Pasted:
		return 0, checkLength(text, int(f.Max))
	case Choice:
		at := slices.IndexFunc(f.Options, func(o Option) bool { return o.Key == text })
		if at < 0 {
			return 0, &OptionError{f, text}
		}
		return float64(at), nil
	case Checked:
		return f.Check(text)
	case Money:
		amount, err := unit.ReadDecimal(text)
		if err != nil {
			return 0, err
		}
		return f.inRange(amount.InexactFloat64())
	case Size:
		size, err := ReadSize(text)
		if err != nil {
			return 0, err
		}
		return f.inRange(size.Amount.InexactFloat64())
	case Clock:
		si, err := readClock(text)
		if err != nil {
			return 0, err
		}
		return f.inRange(si)
	}
	return f.readNumber(text, units)
}

func (f *Field) isNumber() bool {
	return slices.Contains([]Kind{Quantity, Whole, Money, Size, MassOrVolume}, f.Kind)
}

func (f *Field) readNumber(text string, units Units) (float64, error) {
	scale := unit.InPure
	if f.Measure != unit.NoMeasure {
		scale = units.Scale(f.Measure)
	}
	read := unit.Read
	if f.Measure == unit.Numbers {
		read = func(text string, _ unit.Scale) (float64, error) { return unit.ReadRatio(text) }
	}
	si, err := read(text, scale)
	if f.Kind == MassOrVolume && isOtherUnit(err) {
		return readVolume(text, units)
	}
	if err != nil {
		return 0, err
	}
	if f.Kind == Whole && si != float64(int(si)) {
		return 0, &WholeError{text}
	}
	return f.inRange(si)
}

// checkLimits refuses what lies past an end, but for the last bits of a conversion:
// −20 °C is −20 °C.
func (f *Field) inRange(si float64) (float64, error) {
	const bits = 1e-12
	if !(si >= f.Min-bits*math.Abs(f.Min) && si <= f.Max+bits*math.Abs(f.Max)) {
		return 0, &RangeError{f, si}
	}
	return si, nil
}

// OptionName is the name of the option of a key; "" where there is none.
func OptionName(list []Option, key string) string {
	for _, o := range list {
		if o.Key == key {
			return o.Name
		}
	}
	return ""
}
