// Package axis has what several calculators ask of an axis: its setting in any convention,
// motor, gears and output element, the measuring tool; how a fact reads in the other
// conventions, and what else a new setting affects.
package axis
