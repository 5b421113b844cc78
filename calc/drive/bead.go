package drive

import (
	"math"

	"striderule/calc/unit"
)

// Rounding returns what the two round flanks of a printed line take off its
// section, as a width, mm: a line of width w and layer height h holds as much
// plastic as a rectangle of w less this. Source: geometry, h·(1 − π/4).
func Rounding(layer unit.Length) unit.Length { return layer * (1 - math.Pi/4) }

// BeadArea returns the section of one printed line, mm²: flat between two
// half-rounds as high as the layer, h·(w − h) + π·h²/4. The width is at least
// the layer height. Source: geometry.
func BeadArea(width, layer unit.Length) float64 { return float64(layer * (width - Rounding(layer))) }

// FilamentMass returns the mass of a length of round filament, L·π/4·d²·ρ.
func FilamentMass(length, diameter unit.Length, density unit.Density) unit.Mass {
	volume := float64(length) * math.Pi / 4 * float64(diameter) * float64(diameter) // mm³
	return unit.Mass(volume / 1000 * float64(density))
}
