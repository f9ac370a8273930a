// Package plan takes a job and gives a complete plan. It is the only package that
// knows all sums: it opens the cards, hands their figures to the sums, and keeps
// the working of every figure.
//
// What can't be planned is reported by the path of the field that it depends on: a
// Refused text or figure is wrong as typed, a Waiting one has yet to be typed, an
// Ask is unlikely but accepted.
package plan
