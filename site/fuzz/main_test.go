package main

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTargets(t *testing.T) {
	found, err := targets(context.Background(), "shedreckoner/calc/...", "shedreckoner/wasm/...")
	require.NoError(t, err)
	assert.Contains(t, found, target{"shedreckoner/calc/unit", "FuzzRead"})
	packages := map[string]bool{}
	for _, f := range found {
		packages[f.Package] = true
	}
	assert.Greater(t, len(packages), 3)
}

func TestWhatGoSays(t *testing.T) {
	const passed = "fuzz: elapsed: 0s, gathering baseline coverage: 0/9 completed\nfuzz: elapsed: 3s, execs: 7 (2/sec), new interesting: 0 (total: 9)\nPASS\n"
	assert.Equal(t, "3s, execs: 7 (2/sec), new interesting: 0 (total: 9)", lastProgress(passed))
	const late = "--- FAIL: FuzzX (1.30s)\n    context deadline exceeded\nFAIL\n"
	assert.True(t, ranOut(late))
	assert.False(t, ranOut(late+"Failing input written to testdata/fuzz/FuzzX/1\n"))
	assert.False(t, ranOut("--- FAIL: FuzzX (0.01s)\n    x_test.go:1: bad\n"))
}
