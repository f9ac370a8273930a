package main

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCodeOf(t *testing.T) {
	code, err := codeOf(context.Background(), emptyProgram)
	require.NoError(t, err)
	sum := 0
	for _, bodies := range code {
		sum += len(bodies)
	}
	assert.Greater(t, len(code["runtime"]), sum/3, "most of an empty program is the runtime")
	assert.NotEmpty(t, code["syscall/js"])
	assert.Less(t, len(code["other"]), sum/20, "what no package is found for")
}

func TestFinder(t *testing.T) {
	find := finder([]string{"shedreckoner/calc/unit", "shedreckoner/calc", "github.com/shopspring/decimal", "sync", "sync/atomic"})
	for function, want := range map[string]string{
		"shedreckoner_calc_unit.Read":               "shedreckoner/calc/unit",
		"github.com_shopspring_decimal.Decimal.Add": "github.com/shopspring/decimal",
		"sync.__Mutex_.Lock":                        "sync",
		"sync_atomic.__Value_.Load":                 "sync/atomic",
		"_rt0_wasm_js":                              "other",
	} {
		assert.Equal(t, want, find(function), function)
	}
}

func TestQuantile(t *testing.T) {
	assert.Equal(t, 2.0, median([]float64{9, 1, 2}))
	hundred := make([]float64, 100)
	for i := range hundred {
		hundred[99-i] = float64(i + 1)
	}
	assert.Equal(t, 95.0, quantile(hundred, 0.95))
}
