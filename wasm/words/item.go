package words

// Names of the items of lists, and what can be done with each.
const (
	CombReadingItem  = "comb reading"
	MeasuredFilmItem = "measured film"
	OwnRemovalItem   = "own removal"
	TableRowItem     = "row of the table"
	FinishedWorkItem = "finished work"
	CupTestItem      = "cup test"
	MoveUp           = "Move up"
	MoveDown         = "Move down"
)
