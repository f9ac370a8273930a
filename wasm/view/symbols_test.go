package view

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// As print sets them (ISO 80000-1, 7.1: quantities are set in italic type; numbers, functions and what is short for words upright).
func TestSymbolsAreSetAsInPrint(t *testing.T) {
	for formula, want := range map[string]string{
		"f_c = (c_ref ÷ c) ^ n":   "<i>f</i><sub>c</sub> = (<i>c</i><sub>ref</sub> ÷ <i>c</i>)<sup><i>n</i></sup>",
		"k = 2 ^ ((20 − T) ÷ 10)": "<i>k</i> = 2<sup>(20 − <i>T</i>) ÷ 10</sup>",
		"B = 0.445 × h^1.675":     "<i>B</i> = 0.445 × <i>h</i><sup>1.675</sup>",
		"WFT = DFT ÷ VS'":         "WFT = DFT ÷ VS'",
		"y = exp(x) ^ 2 + Φ(z)":   "<i>y</i> = exp(<i>x</i>)<sup>2</sup> + Φ(<i>z</i>)",
		"a ^":                     "<i>a</i><sup></sup>",
	} {
		assert.Equal(t, want, symbols(formula).String(), formula)
	}
}
