package module

import "slices"

// dropCopies leaves a value on the stack where it would go into a register just to be taken out again.
func dropCopies(code []instruction) []instruction {
	var kept []instruction
	for i := 0; i < len(code); i++ {
		in := code[i]
		next, before := takenAgain(code[i:], kept)
		switch {
		case in.code == nop:
		case next == 0:
			kept = append(kept, in)
		default:
			kept = slices.Insert(kept, before, code[i+1:i+next]...)
			if i += next; isUsed(code[i+1:], in.n) {
				kept = append(kept, instruction{code: localTee, n: in.n})
			}
		}
	}
	return kept
}

// takenAgain says how many instructions after the first, which puts a value into a register, it is taken out again; 0: too
// far away. What is taken from elsewhere first, mostly an address, can be taken before the value is made, which begins at
// the place given.
func takenAgain(code, kept []instruction) (next, before int) {
	taken := instruction{code: localGet, n: code[0].n}
	switch {
	case code[0].code != localSet || taken.n < firstRegister:
		return 0, 0
	case is(code[1:], taken):
		return 1, len(kept)
	case len(code) > 2 && code[1].code == localGet && is(code[2:], taken):
		if begin, ok := beginOf(kept, code[1].n); ok {
			return 2, begin
		}
	}
	return 0, 0
}

// beginOf finds where the making of the value on top of the stack begins, if the local stays as it is meanwhile.
func beginOf(code []instruction, local int) (begin int, ok bool) {
	missing := 1
	for i := len(code) - 1; i >= 0; i-- {
		in := code[i]
		takes, gives, ok := in.effect()
		if !ok || (in.code == localSet || in.code == localTee) && in.n == local {
			return 0, false
		}
		if missing += takes - gives; missing == 0 {
			return i, true
		}
	}
	return 0, false
}

// isUsed says if a register's value may still be read. It follows the code as far as it goes straight on.
func isUsed(code []instruction, register int) bool {
	for i, in := range code {
		switch in.code {
		case localGet:
			if in.n == register {
				return true
			}
		case localSet, localTee:
			if in.n == register {
				return false
			}
		case ret, unreachable:
			return false
		case call, callAt:
			if is(code[i+1:], stackCopied...) && len(code) > i+4 && code[i+3].code == brIf && code[i+4].code == end {
				return false // the function may be left here, and gone on with later without its registers
			}
		case br, brIf, brTable, ifTrue, orElse:
			return true
		}
	}
	return false
}
