package deflate

// How hard matches are looked for: at so many earlier places with the same beginning, and at no further places within a
// match that is long enough.
const (
	window     = 1 << 15
	tries      = 1024
	longEnough = 128
)

// finder finds earlier places with the same three bytes: the latest by their hash, and before each the one before.
type finder struct {
	data           []byte
	latest, before []int // one more than the place; 0: none
}

func newFinder(data []byte) *finder { return &finder{data, make([]int, 1<<16), make([]int, window)} }

// find gives, for each place, its matches: the nearest of each length, longer and longer.
func (f *finder) find(from, to int) [][]token {
	all := make([][]token, to-from)
	past := from // up to here a long match covers what follows
	for i := from; i < min(to, len(f.data)-2); i++ {
		hash := (uint32(f.data[i]) | uint32(f.data[i+1])<<8 | uint32(f.data[i+2])<<16) * 0x9e3779b1 >> 16
		if i >= past {
			list := f.at(i, f.latest[hash]-1)
			if n := len(list); n > 0 && list[n-1].length >= longEnough {
				past = i + list[n-1].length
			}
			all[i-from] = list
		}
		f.before[i%window] = f.latest[hash]
		f.latest[hash] = i + 1
	}
	return all
}

func (f *finder) at(i, earlier int) (list []token) {
	rest := f.data[i:min(i+longest, len(f.data))]
	best := 2
	for n := 0; n < tries && best < len(rest) && earlier >= 0 && i-earlier <= window; n++ {
		if f.data[earlier+best] == rest[best] {
			length := 0
			for length < len(rest) && f.data[earlier+length] == rest[length] {
				length++
			}
			if length > best {
				best = length
				list = append(list, token{length, i - earlier})
			}
		}
		earlier = f.before[earlier%window] - 1
	}
	return list
}
