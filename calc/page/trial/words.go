package trial

import (
	"striderule/calc/measure"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// warnings are the doubts of package measure, each with its cure.
var warnings = word.Table{
	{string(measure.WarnOneRun), "One run can't show the scatter: make at least three."},
	{string(measure.WarnTwoRuns), "Two runs give only a rough idea of the scatter. A third run cuts the ± to about a third."},
	{string(measure.WarnAllEqual), "All results are the same: the scatter is below your tool's resolution. A finer tool would show it."},
	{string(measure.WarnNothingKnown), "Nothing shows yet how good these readings are."},
	{string(measure.WarnWilder), "These runs scatter more than the scatter you know from before: only their own scatter counts. Look for what has changed."},
	{string(measure.WarnOverRange), "A reading is longer than this tool usually reaches. Use a longer tool: measuring in two parts adds errors."},
	{string(measure.WarnTwoLengths), "Two lengths always lie on a straight line: add a third."},
	{string(measure.WarnNoRepeats), "With one reading at each, scatter can't be told from a bend in the line. Read each at least twice."},
	{string(measure.WarnRepeatsEqual), "All repeats are the same: the scatter is below your tool's resolution."},
	{string(measure.WarnNotStraight), "The readings are off a straight line by more than their scatter. Look for one wrong reading, or for something that happens at one end only."},
	{string(measure.WarnOneApproach), "One approach from each side can't show how well it repeats. Approach every target at least twice from each side."},
	{string(measure.WarnTwoSpeeds), "Two speeds always lie on a straight line: add a third."},
	{string(measure.WarnErrorRises), "It feeds more at higher speed, which slip can't do. Look for a reading taken before the move had ended, or make the runs in another order: the extruder may have warmed up."},
	{string(measure.WarnErrorUneven), "Speed matters, but the error neither falls nor rises all the way: that isn't slip. Look for one wrong reading, a run that was stopped early, or something that shakes at that speed. Then repeat the runs at that speed."},
	{string(measure.WarnBent), "The error doesn't follow a straight line: it grips at low speed and then slips. The setting is taken from the two slowest speeds. Add runs at a lower one."},
	{string(measure.WarnMayHide), "The runs scatter so much that slip beyond your acceptable error could hide in them. More runs, or longer ones, would show it."},
}

// Verdicts.
const (
	leaveTitle  = "Leave it"
	changeTitle = "Change it"
	eitherTitle = "Either is fine"
	moreTitle   = "Measure more"
	// TooCoarseTitle is that of the verdict where the means are.
	TooCoarseTitle = "Too coarse to settle it"

	within       word.Template = "That's within your acceptable error of ± {tolerance}."
	withinSure   word.Template = "One end of that is beyond your acceptable error of ± {tolerance}, but the error itself is most likely within it ({sure} confidence)."
	beyond       word.Template = "That's more than your acceptable error of ± {tolerance}."
	beyondSure   word.Template = "One end of that is within your acceptable error of ± {tolerance}, but the error itself is most likely beyond it ({sure} confidence)."
	eitherSays   word.Template = "That's right at your acceptable error of ± {tolerance}, and measuring more won't settle it. Change it or leave it: either is fine."
	tooCoarse    word.Template = "It's off, but your measurement is too coarse to correct it to ± {tolerance}."
	cannotSettle word.Template = "More of the same won't settle it: your measurement is too coarse for ± {tolerance}."
	cannotTell   word.Template = "These readings can't tell yet whether the true error is within your acceptable ± {tolerance}."

	notClearlyBeyond word.Template = "That looks like more than your acceptable error of ± {tolerance}: more runs must confirm it."
	notClearlyWithin word.Template = "That looks like less than your acceptable error of ± {tolerance}: more runs must confirm it."
	comesWithPlan    word.Template = "You planned {n} runs: the verdict comes with the last of them."
)

// parts are the causes of uncertainty, by their IDs.
var parts = word.Table{
	{measure.Scatter, "Scatter between runs"},
	{measure.Placement, "Making the mark, and finding it again by eye"},
	{measure.Resolution, "Tool resolution"},
	{measure.Accuracy, "Tool accuracy"},
	{measure.Certificate, "Tool certificate"},
	{measure.LineFit, "Fit of the line"},
	{measure.MarkPart + measure.Resolution, "Tool resolution, mark"},
	{measure.MarkPart + measure.Accuracy, "Tool accuracy, mark"},
	{measure.MarkPart + measure.Certificate, "Tool certificate, mark"},
	{measure.RemainingPart + measure.Resolution, "Tool resolution, remaining"},
	{measure.RemainingPart + measure.Accuracy, "Tool accuracy, remaining"},
	{measure.RemainingPart + measure.Certificate, "Tool certificate, remaining"},
}

// What the verdict rests on.
const (
	partsTitle    = "Standard uncertainty of the error, largest part first"
	combinedLabel = "Combined standard uncertainty"
	dofLabel      = "Effective degrees of freedom"
	coverageLabel = "Coverage factor k for 95%"
	withinLabel   = "Probability that the error is acceptable"
	aboveLabel    = "Probability that it's too much"
	belowLabel    = "Probability that it's too little"

	guideLabel    = "k times the combined standard uncertainty"
	halfLabel     = "Half-width of the interval shown"
	intervalMeans = "± is the half-width of an interval that holds the true value in 95 of 100 such tests. With only a few readings that differ, it's wider than k times the standard uncertainty, because the scatter itself is poorly known. “How it works” has the formula, and how often it holds."
	levelMeans    = "You may check after every reading, so the verdict gets stricter each time: one lucky reading mustn't settle it."
)

// A TestWords is what a drawing of a test says beside its dimension lines, and in words.
// The parts of those are lengths: {mark} and {rest} from the extruder's inlet, and {fed}.
type TestWords struct {
	_         unit.Uncompared
	Left, Way string // what remains to the mark, and what is fed
	Says      word.Template
}

var (
	// TestToCome is a test that is planned.
	TestToCome = TestWords{
		Left: "should remain", Way: "to feed",
		Says: "The mark is {mark} from the extruder's inlet before the run. Once {fed} is fed, {rest} should remain.",
	}
	// nominalTest is one before anything is known of it.
	nominalTest = TestWords{
		Left: "remaining", Way: "fed",
		Says: "A mark on the filament, farther from the extruder's inlet than the commanded length, comes nearer during the run. The length fed is its distance before minus what remains.",
	}
)

// Beside the drawing of a test.
const (
	nominalTitle = "How the mark moves"
	beforeWord   = "before"
	afterWord    = "after"
	markWord     = "mark"
)

// What a finer tool would bring.
const (
	finerTool        word.Template = "Measure with {tool}: that would give about ± {error}."
	finerToolMayDo   word.Template = "Measure with {tool}: that would give about ± {error}, which may be enough to settle it."
	finerToolAbout   word.Template = "Measure with {tool}: that would give about ± {error}; {enough} may settle it."
	finerToolSettles word.Template = "Measure with {tool}: that would give about ± {error}; {enough} should settle it."
	finerToolEnough  word.Template = "Measure with {tool}: that would give about ± {error}, enough to settle it."
)
