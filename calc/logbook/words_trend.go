package logbook

import "striderule/calc/word"

// What the results of an axis show with time.
const (
	tooFew     = "Not enough for a trend: it takes at least three results on different days."
	oneMoment  = "All of these are from the same time. A trend needs results from different days."
	tooFar     = "These results are too far apart in size to show a trend."
	noChange   = "No trend: it's the same each time."
	smallDrift = "The whole drift is smaller than the ± of the latest result: it may be the measurement, not the machine."

	fewDates = "With so few results only a strong trend shows. A few more, farther apart in time, would tell."

	rising  word.Template = "Rising by {change} a month (at least 95% confidence)."
	falling word.Template = "Falling by {change} a month (at least 95% confidence)."
	unclear word.Template = "No clear trend: anything from {low} to {high} a month would fit, including no change."
	latest  word.Template = "The chart shows the latest {shown} results; the text uses all {all}."
)

// The chart of a trend.
const (
	trendTitle word.Template = "{result} over time"
	daysSince  word.Template = "Days since {date}"
	withRange                = "result with its interval"
	throughAll               = "line through the results"
)
