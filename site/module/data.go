package module

// segment is a piece of the memory as the program finds it.
type segment struct {
	at    int
	bytes []byte
}

func (s segment) end() int { return s.at + len(s.bytes) }

// largest is more memory than any program of ours begins with.
const largest = 1 << 28

// readSegments reads the data section that Go's linker writes: segments of the one memory, each at a constant place.
func readSegments(content []byte) []segment {
	r := newReader(content)
	list := make([]segment, r.number())
	for i := range list {
		r.skip(0, i32Const)
		list[i].at = r.number() // signed in the module: the same as unsigned for what isn't negative
		r.skip(end)
		list[i].bytes = r.vector()
		if list[i].at > largest || list[i].end() > largest {
			damaged("data at %d, beyond what Go's linker lays out", list[i].at)
		}
	}
	if r.Len() > 0 {
		damaged("%d bytes behind the last of the data", r.Len())
	}
	return list
}

func writeSegments(list []segment) []byte {
	content := appendNumber(nil, len(list))
	for _, s := range list {
		content = appendSigned(append(content, 0, i32Const), s.at)
		content = appendVector(append(content, end), s.bytes)
	}
	return content
}

// memoryOf is what the program finds when it starts.
func memoryOf(list []segment) []byte {
	var all []byte
	for _, s := range list {
		all = append(all, make([]byte, max(0, s.end()-len(all)))...)
		copy(all[s.at:], s.bytes)
	}
	return all
}

// longestGap is how many zero bytes between two segments are written out. The linker leaves out every run of eight; the
// heads of tens of thousands of segments compress far worse than zeros do. What is written out is unpacked and copied at
// every start, so it isn't more than the rows for finding functions are apart.
const longestGap = 256

// joined gives segments that fill the same memory with no longer gaps.
func joined(memory []byte) []segment {
	var out []segment
	for at, b := range memory {
		if b == 0 {
			continue
		}
		if last := len(out) - 1; last < 0 || at > out[last].end()+longestGap {
			out = append(out, segment{at, memory[at : at+1]})
		} else {
			out[last].bytes = memory[out[last].at : at+1]
		}
	}
	return out
}
