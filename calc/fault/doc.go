// Package fault compares what can be seen to have gone wrong with a coat with what
// the log recorded of its cup and its day: what each fault may come from, and which
// of these causes the figures bear out.
package fault
