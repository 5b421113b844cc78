// Package axis has what several calculators ask of an axis: its setting in any convention,
// motor, gears and output element, the instrument; how a fact reads in the other
// conventions, and what else a change of scale touches.
package axis
