// Package plan takes a job in and gives a whole plan out. It is the only
// package that knows all sums: it opens the cards, hands their figures to the
// sums, and keeps the working of every figure.
//
// What can't be planned is told by the path of the field that it hangs on: a
// Refused text or figure is wrong as typed, a Waiting one has yet to be typed,
// an Ask is unlikely but taken.
package plan
