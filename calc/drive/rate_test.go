package drive_test

import (
	"fmt"
	"testing"

	"striderule/calc/drive"
	"striderule/calc/unit"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// 300 mm/s at 80 steps/mm under a limit of 40 kHz.
func ExamplePulseRate() {
	fmt.Println(drive.PulseRate(300, 80), drive.TopSpeed(40_000, 80))
	// Output: 24000 500
}

// 24 V on a phase of 3.2 mH at 1.5 A peak, 200 full steps per turn.
func ExampleCornerOf() {
	c := drive.CornerOf(24, 3.2, 1.5, 200)
	fmt.Printf("%.4g s %.6g %.6g\n", float64(c.PerFullStep), c.FullSteps, c.Turns)
	// Output: 0.0004 s 2500 12.5
}

func TestTopSpeedIsWhereTheLimitIsReached(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.Float64Range(0.1, 1e5).Draw(t, "steps")
		limit := unit.PulseRate(rapid.Float64Range(1e3, 1e7).Draw(t, "limit"))
		assert.InEpsilon(t, float64(limit), float64(drive.PulseRate(drive.TopSpeed(limit, steps), steps)), 1e-12)
	})
}

func TestIncrementalTorqueFalls(t *testing.T) {
	assert.Equal(t, 1.0, drive.IncrementalTorque(1), "a full step has all of it")
	assert.InEpsilon(t, 0.0980171403295606, drive.IncrementalTorque(16), 1e-12)
	for m := unit.Count(1); m < 256; m++ {
		assert.Greater(t, drive.IncrementalTorque(m), drive.IncrementalTorque(m+1))
	}
}
