package trial

import "striderule/calc/sheet"

// WhyOutputs are the figures of WhyBlocks.
var WhyOutputs = []sheet.Output{
	{ID: "within", Label: "Probability that the error is acceptable", Unit: "%"},
	{ID: "above", Label: "Probability that it's too much", Unit: "%"},
	{ID: "below", Label: "Probability that it's too little", Unit: "%"},
	{ID: "part", Label: "Standard uncertainty of the error from one cause", Unit: "%"},
	{ID: "combined", Label: "Combined standard uncertainty", Unit: "%"},
	{ID: "dof", Label: "Effective degrees of freedom", Unit: "1"},
	{ID: "k", Label: "Coverage factor k for 95%", Unit: "1"},
	{ID: "guide", Label: "k times the combined standard uncertainty", Unit: "%"},
	{ID: "half", Label: "Half-width of the interval shown", Unit: "%"},
}

const twoMistakes = "Two mistakes together:"
