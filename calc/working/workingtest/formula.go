package workingtest

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"shedreckoner/calc/working"
)

// Evaluate computes the right side of a formula with the values of its symbols.
// It reads + − × · ÷ / ^ ² ³, brackets, π and the functions of table funcs.
func Evaluate(expr string, values map[string]float64) (v float64, err error) {
	p := &parser{values: values}
	for _, tok := range working.Tokens(expr) {
		if strings.TrimSpace(tok.Text) != "" {
			p.tokens = append(p.tokens, tok)
		}
	}
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%v in %q", r, expr)
		}
	}()
	v = p.sum()
	if p.at < len(p.tokens) {
		return 0, fmt.Errorf("left over from %q on in %q", p.tokens[p.at].Text, expr)
	}
	return v, nil
}

var funcs = map[string]func(...float64) float64{
	"ln":   func(x ...float64) float64 { return math.Log(x[0]) },
	"exp":  func(x ...float64) float64 { return math.Exp(x[0]) },
	"sin":  func(x ...float64) float64 { return math.Sin(x[0]) },
	"cos":  func(x ...float64) float64 { return math.Cos(x[0]) },
	"cot":  func(x ...float64) float64 { return 1 / math.Tan(x[0]) },
	"atan": func(x ...float64) float64 { return math.Atan(x[0]) },
	"acos": func(x ...float64) float64 { return math.Acos(x[0]) },
	"max":  func(x ...float64) float64 { return math.Max(x[0], x[1]) },
	"min":  func(x ...float64) float64 { return math.Min(x[0], x[1]) },
	"Φ":    func(x ...float64) float64 { return math.Erfc(-x[0]/math.Sqrt2) / 2 }, // standard normal distribution
	"ceil": func(x ...float64) float64 { return math.Ceil(x[0]) },
}

type parser struct {
	tokens []working.Token
	at     int
	values map[string]float64
}

func (p *parser) peek() string {
	if p.at < len(p.tokens) {
		return p.tokens[p.at].Text
	}
	return ""
}

func (p *parser) accept(texts ...string) string {
	for _, text := range texts {
		if p.peek() == text {
			p.at++
			return text
		}
	}
	return ""
}

func (p *parser) expect(text string) {
	if p.accept(text) == "" {
		panic(fmt.Sprintf("%q where %q should be", p.peek(), text))
	}
}

func (p *parser) sum() float64 {
	v := p.product()
	for {
		switch p.accept("+", "−", "-") {
		case "+":
			v += p.product()
		case "":
			return v
		default:
			v -= p.product()
		}
	}
}

func (p *parser) product() float64 {
	v := p.signed()
	for {
		switch p.accept("×", "·", "÷", "/") {
		case "×", "·":
			v *= p.signed()
		case "":
			return v
		default:
			v /= p.signed()
		}
	}
}

func (p *parser) signed() float64 {
	if p.accept("−", "-") != "" {
		return -p.signed()
	}
	if p.accept("√") != "" {
		return math.Sqrt(p.power())
	}
	return p.power()
}

func (p *parser) power() float64 {
	v := p.primary()
	switch p.accept("²", "³", "^") {
	case "²":
		return v * v
	case "³":
		return v * v * v
	case "^":
		return math.Pow(v, p.signed())
	}
	return v
}

func (p *parser) primary() float64 {
	for open, shut := range map[string]string{"(": ")", "[": "]"} {
		if p.accept(open) != "" {
			v := p.sum()
			p.expect(shut)
			return v
		}
	}
	if p.at >= len(p.tokens) {
		panic("formula ends early")
	}
	tok := p.tokens[p.at]
	p.at++
	if tok.IsNumber {
		v, err := strconv.ParseFloat(tok.Text, 64)
		if err != nil {
			panic(err)
		}
		return v
	}
	if v, known := p.values[tok.Text]; known {
		return v
	}
	if tok.Text == "π" {
		return math.Pi
	}
	if f, known := funcs[tok.Text]; known {
		return f(p.arguments()...)
	}
	panic(fmt.Sprintf("unknown symbol %q", tok.Text))
}

func (p *parser) arguments() []float64 {
	p.expect("(")
	list := []float64{p.sum()}
	for p.accept(",") != "" {
		list = append(list, p.sum())
	}
	p.expect(")")
	return list
}
