package jobtest

// HandMixed is a deck of 2 m² that is filled with a putty mixed by hand, of 33 g of
// hardener to 100 g of resin. Its fillers are parts 3 and on: the test adds them, and
// the list of parts.
const HandMixed = `surface = 1
surface.1.width = 1 m
surface.1.length = 2 m
surface.1.buildup = buildup.1
buildup = 1
buildup.1.step = 1
buildup.1.step.1.kind = fill
buildup.1.step.1.putty = putty.1
buildup.1.step.1.thickness = 2 mm
putty = 1
putty.1.part.1.what = resin
putty.1.part.1.mass = 100 g
putty.1.part.2.what = hardener
putty.1.part.2.mass = 33 g
`
