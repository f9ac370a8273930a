// Package material holds what is known of each material before the builder has
// typed anything: one card a material, with every figure's range and mark, the
// methods of putting it on, and what goes with them. None of these figures was
// tried in a cup: on the page each says to check the tin or to log your own.
//
// A card's figures are entries of the table Fields: form, check, saved text and
// working follow from the entry.
package material
