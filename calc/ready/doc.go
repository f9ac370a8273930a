// Package ready holds the sequences that a build-up can start from: whole, with
// films, grades and waits, so that one of them and one surface give an order.
// They are rows of a table; what holds for a build-up that was typed holds for
// them. Source: common practice, each figure within its card's limits.
package ready
