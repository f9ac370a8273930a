package deflate_test

import (
	"bytes"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"shedreckoner/site/pack/deflate"
)

// unpacked is what the standard library's reader makes of it.
func unpacked(t *testing.T, packed []byte) []byte {
	t.Helper()
	r, err := gzip.NewReader(bytes.NewReader(packed))
	require.NoError(t, err)
	data, err := io.ReadAll(r)
	require.NoError(t, err)
	return data
}

// samples are data of every kind: nothing, single bytes, noise, runs longer than the longest match, what repeats itself at
// and beyond the window's end, and few and many different bytes.
func samples() map[string][]byte {
	rnd := rand.New(rand.NewPCG(1, 2))
	noise := func(n, kinds int) []byte {
		b := make([]byte, n)
		for i := range b {
			b[i] = byte(rnd.IntN(kinds))
		}
		return b
	}
	far := noise(1<<15, 256)
	words := []byte{}
	for len(words) < 60_000 {
		words = append(words, far[rnd.IntN(64)*16:][:1+rnd.IntN(16)]...)
	}
	return map[string][]byte{
		"none": {}, "one": {7}, "two": {7, 7}, "three": {1, 2, 3}, "a run": make([]byte, 100_000), "noise": noise(70_000, 256), "two kinds": noise(5_000, 2),
		"at the window's end": append(bytes.Clone(far), far...), "beyond": append(append(bytes.Clone(far), 0), far...), "words": words,
		"parts": append(append(make([]byte, 1<<20-5), words...), words...),
	}
}

func TestTheStandardReaderReadsItBack(t *testing.T) {
	for name, data := range samples() {
		packed := deflate.Gzip(data)
		assert.True(t, bytes.Equal(data, unpacked(t, packed)), name)
		assert.True(t, bytes.Equal(packed, deflate.Gzip(data)), "%s: the same data, the same bytes", name)
	}
}

func FuzzGzip(f *testing.F) {
	f.Add([]byte("abcabcabc"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if !bytes.Equal(data, unpacked(t, deflate.Gzip(data))) {
			t.Error("read back otherwise")
		}
	})
}

func TestItIsSmallerThanTheStandardWriter(t *testing.T) {
	data := samples()["words"]
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	require.NoError(t, err)
	_, err = w.Write(data)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	assert.Less(t, len(deflate.Gzip(data)), b.Len())
}
