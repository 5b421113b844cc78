package distribution

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The root of χ²/ν at 80 and at 20 %, worked out with 25 digits from the incomplete gamma
// function.
func TestReducedChiSquare(t *testing.T) {
	const normal80 = 0.8416212335729143
	for _, c := range []struct{ dof, most, least, off, offLeast float64 }{
		{1, 1.28155156554, 1 / 3.94715387554, 7e-3, 7.2e-2},
		{2, 1.26863624118, 1 / 2.11693649355, 3.3e-3, 4.5e-3},
		{3, 1.24386865278, 1 / 1.72758729408, 2.2e-3, 5e-3},
		{4, 1.22358251602, 1 / 1.55757542256, 1.6e-3, 3.8e-3},
		{8, 1.17420672319, 1 / 1.31968309457, 7e-4, 1.5e-3},
		{20, 1.11887232604, 1 / 1.17127664223, 2.2e-4, 4e-4},
		{100, 1.05672471892, 1 / 1.0663348276, 3e-5, 6e-5},
	} {
		assert.InEpsilon(t, c.most, math.Sqrt(ReducedChiSquare(normal80, c.dof)), c.off)
		assert.InEpsilon(t, c.least, math.Sqrt(ReducedChiSquare(-normal80, c.dof)), c.offLeast)
	}
	assert.InEpsilon(t, 1, ReducedChiSquare(0, 1e9), 1e-8, "of endless degrees of freedom it is 1")
}
