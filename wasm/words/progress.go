package words

// What is done and what is left.
const (
	WhatIsDone         = "What is done"
	RemoveToOpenAgain  = "Remove it under Finished work, and it is open again."
	ToDo               = "to do"
	ToPutOn            = "To be put on, as planned"
	PutOnByCups        = "Put on by cups since"
	LeftToDo           = "Left to do"
	DoneOnAll          = "Done on all of them"
	OrderSaysTheChance = "Order says for what chance it is enough."
	ForCardsChance     = "for the chance that each card wants"
	ToBuyForTheRest    = "To buy for the rest"
	GoToTheOrder       = "Go to the order"
	FinishedWork       = "Finished work"
	ByItsCups          = "by its cups"
	ColumnPutOn        = "Put on"
)
