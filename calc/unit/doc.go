// Package unit reads quantities as people type them and writes them so that
// they read back to the same value.
//
// The pipeline, in order:
//
//  1. readNumber takes the number at the front of a text: "80", "80,5",
//     "1 5/16", "1,000.5" (number.go).
//  2. A Kind knows the units of one quantity and turns number and unit into a
//     value in the quantity's base unit (kind.go, kinds.go, quantities.go).
//  3. An Input is a Kind with a bare unit and a range: one entry of a sheet,
//     given or not. It is a flag.Value (input.go).
//
// Quantities are named float64 types in one base unit: mm, degrees, mm/s,
// steps per mm. Whole things (teeth, starts, microsteps) are a Count.
// Non-finite values cannot get in.
package unit
