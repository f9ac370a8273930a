// Package schedule puts what is left to do on a calendar: one pair of hands,
// every day like today, each coat inside the hours that take its material and
// once the layer below lets it.
package schedule
