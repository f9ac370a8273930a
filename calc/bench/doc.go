// Package bench works out one cup, now: what goes in, how long it lasts, how far it
// goes, what bears on it, and if there is no dose, what brings it back.
package bench
