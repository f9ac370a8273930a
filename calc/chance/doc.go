// Package chance buys what a plan needs, finds out how likely that is to be
// enough, and reads from the log what the next job will really take.
package chance
