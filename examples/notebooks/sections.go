package main

// sections are the headings that every lesson has, in this order, and what a page
// calls them. Others may stand between them.
var sections = map[string]string{
	"## What you will be able to do": "aims",
	"## Predict before you run":      "predict",
	"## A usual mistake":             "mistake",
	"## Exercises":                   "exercises",
	"## Answers":                     "answers",
	"## Sources":                     "sources",
}
