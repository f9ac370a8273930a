// Package fault holds what can be seen to have gone wrong with a coat against
// what the log took down of its cup and its day: what each fault may come from,
// and which of that the figures bear out.
package fault
