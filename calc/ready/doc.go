// Package ready holds the sequences that a build-up can start from: complete, with
// films, grades and waits, so that one of them and one surface give an order. They
// are rows of a table, and are treated as a build-up that was typed. Source: common
// practice, each figure within its card's limits.
package ready
