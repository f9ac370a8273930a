package words

// Sanding, and readings of the film.
const (
	FilmTaken        = "Film taken"
	ForTheTexture    = "of it for the texture before it"
	ByOwnFigure      = ", by your own figure"
	UseThese         = "Use these"
	WhatAGradeTakes  = "What a grade takes: your own figures"
	HowToFindRemoval = "Weigh an offcut, or read the film twice at one spot, before and after one grade. Your figure then stands in place of the assumption."
	AddOwnRemoval    = "Add a figure of my own"
	GradeNotTyped    = "Grade not typed"
	AsCuredGelCoat   = "as cured gel coat"
	ItTakes          = "It takes"
	CombReadings     = "Comb readings, each of one coat"
	AddACombReading  = "Add a comb reading"
	AddAMeasuredFilm = "Add a measured film"
	WholeArea        = "all of it"
)
