// Package job keeps a job as a document of what was typed: lines of a path and a
// text, "surface.3.height = 2 ft 6 in". The document is what is saved, linked,
// undone and moved between format versions; reading it gives typed values and a
// list of problems by path, and loses nothing that was typed.
//
// A path is made of names and ids joined by dots. A list's own path holds the ids
// of its items in their order ("surface" = "1 3 2"), an item's fields are under
// list and id ("surface.3.height"). A line with an empty text doesn't exist.
package job
