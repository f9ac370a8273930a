package words

import (
	"strconv"
)

// What is done and what is left.
const (
	WhatIsDone         = "What is done"
	RemoveToOpenAgain  = "Remove it under Finished work, and it is open again."
	ToDo               = "to do"
	ToPutOn            = "To be put on, as planned"
	PutOnByCups        = "Put on by cups since"
	LeftToDo           = "Left to do"
	DoneOnAll          = "Done on all of them"
	OrderSaysTheChance = "Order says how likely that is to be enough."
	ForCardsChance     = "for the chance set on each card"
	ToBuyForTheRest    = "To buy for the rest"
	GoToTheOrder       = "Go to the order"
	FinishedWork       = "Finished work"
	ByItsCups          = "by its cups"
)

// DoneOf counts the surfaces that a step is done on.
func DoneOf(done, all int) string { return strconv.Itoa(done) + " of " + strconv.Itoa(all) + " done" }

// Begun counts the cups of a step that isn't done.
func Begun(cups int) string { return "begun: " + Counted(cups, "cup", "cups") }

// DoneOn logs a step as done on a surface.
func DoneOn(surface string) string { return "Done on " + surface }

// StockIsEnough says that nothing must be bought for the rest; meant is for which need.
func StockIsEnough(meant string) string {
	return "What is in stock is enough for the rest, " + meant + "."
}

// BeyondStock heads what must be bought for the rest.
func BeyondStock(meant string) string {
	return "Beyond what is in stock, " + meant + ", going by what you use from the log."
}
