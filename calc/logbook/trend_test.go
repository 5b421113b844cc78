package logbook

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: 80, 81, 80 on days 0, 5, 10 have a slope of 0. What is left over is
// √(2/3), so that the standard uncertainty is √(2/3/50) a day; times Student's t
// for one degree, 12.7062, and 30.4375 days that is 44.7 a month.
func TestNoTrendSaysWhatWouldFit(t *testing.T) {
	trend := Trends(results(t, 1, [2]float64{1, 80}, [2]float64{6, 81}, [2]float64{11, 80}))[0]
	assert.Contains(t, trend.Says[0], "anything from −45 steps/mm to 45 steps/mm a month would fit")
}

// 2 in all are more than ± 1.8, and less than ± 2.2.
func TestTrendBesideTheUncertainty(t *testing.T) {
	points := [][2]float64{{1, 80}, {6, 80.51}, {11, 81}, {16, 81.49}, {21, 82}}
	assert.Len(t, Trends(results(t, 1.8, points...))[0].Says, 1)
	assert.Len(t, Trends(results(t, 2.2, points...))[0].Says, 2)
}

func TestTrendSaysWhatItIsOf(t *testing.T) {
	trend := Trends(results(t, 0.1, [2]float64{1, 80}, [2]float64{11, 81}, [2]float64{21, 82.3}))[0]
	assert.Equal(t, "Steps per mm", trend.Label)
	assert.Equal(t, "Steps per mm over time", trend.Chart.Title)
	assert.Equal(t, "trend-1", trend.Chart.ID)
	require.Len(t, trend.Chart.Curves, 1)
	assert.Equal(t, trend.Chart.Points[0].X, trend.Chart.Curves[0].At[0].X, "the line begins at the first result")
	assert.Equal(t, trend.Chart.Points[2].X, trend.Chart.Curves[0].At[1].X)
}

// A picture shows up to 200 results, and is said to leave some out only when it does.
func TestTrendOf200(t *testing.T) {
	for n, says := range map[int]bool{mostShown: false, mostShown + 1: true} {
		trend := trendOf(NewBook(many(4*mostShown)...).Of("Heron", "feed")[:n], "1")
		assert.Len(t, trend.Chart.Points, mostShown)
		assert.Equal(t, says, strings.Contains(strings.Join(trend.Says, " "), "The chart shows the latest"), n)
	}
}

// Characters that JSON does not allow in texts are escaped; a space is none.
func TestControlCharactersAreEscaped(t *testing.T) {
	var b strings.Builder
	writeString(&b, "a \x01\x1f")
	assert.Equal(t, `"a \u0001\u001f"`, b.String())
}

func TestLongestSheetFile(t *testing.T) {
	good := WriteSheet(formOf(t, "measure", tidewater))
	_, _, err := ReadSheet(good + strings.Repeat(" ", MostSheet-len(good)))
	assert.NoError(t, err)
	_, _, err = ReadSheet(good + strings.Repeat(" ", MostSheet-len(good)+1))
	assert.ErrorContains(t, err, "longer than")
}

// 80, 80.1, 80.2 on days 0, 9, 18 are 0.1/9 a day, which in 30.4375 days is 0.338194.
func TestTrendWithoutScatter(t *testing.T) {
	trend := Trends(results(t, 0.1, [2]float64{1, 80}, [2]float64{10, 80.1}, [2]float64{19, 80.2}))[0]
	assert.Contains(t, trend.Says[0], "Rising by 0.338 steps/mm a month (")
}
