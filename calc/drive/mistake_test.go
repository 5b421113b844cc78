package drive

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/unit"
)

// kinds are what the explanations of a ratio are about, the first one first.
func kinds(ratio float64, k Known) []string {
	var list []string
	for _, f := range ReadRatio(ratio, 0.002, 0, Mistakes(k)).Fits {
		list = append(list, f[0].Kind)
	}
	return list
}

// What is more usual is named first.
func TestUsualMistakesComeFirst(t *testing.T) {
	half := Known{Stages: Stages{{20, 40}}, Output: Belt{2, 30}}
	assert.Equal(t, []string{mixMotor, mixMicro, mixGears, mixTeeth}, kinds(0.5, half), "a half")
	assert.Equal(t, []string{mixMotor, mixMicro, mixGears}, kinds(2, half), "twice")
	two := Known{Output: Screw{Pitch: 2, Starts: 2}}
	assert.Equal(t, []string{mixMotor, mixMicro, mixLead, mixLead}, kinds(2, two), "its pitch for its lead, then another lead")
	four := Known{Output: Screw{Pitch: 2, Starts: 4}}
	assert.Equal(t, []string{mixLead, mixMicro}, kinds(4, four))
	assert.Equal(t, []string{mixLead, mixMicro}, kinds(4, Known{}))
	assert.Equal(t, []string{mixMicro}, kinds(16, Known{}), "1/16 is a usual entry")
	assert.Equal(t, []string{mixMicro}, kinds(1./16, Known{}))
	turned := Known{Stages: Stages{{20, 40}}, Feed: true}
	assert.Equal(t, []string{mixGears, mixMicro}, kinds(0.25, turned))
}

// With one stage, a turn taken for the other is the pair that was left out: it is
// told once.
func TestOneStageIsToldOnce(t *testing.T) {
	assert.Equal(t, []string{mixGears}, kinds(1/4.5, Known{Stages: Stages{{12, 54}}, Feed: true}))
	assert.Equal(t, []string{mixGears}, kinds(4.5, Known{Stages: Stages{{12, 54}}, Feed: true}))
	two := Known{Stages: Stages{{12, 54}, {20, 50}}, Feed: true}
	assert.Contains(t, kinds(1/11.25, two), mixDriveSide)
	same := Known{Stages: Stages{{20, 40}, {40, 20}}, Feed: true}
	for _, m := range Mistakes(same) {
		assert.NotEqual(t, mixDriveSide, m.Kind, "both turns are as large")
	}
}

// Every size that is usual is thought of, against whatever is set.
func TestUsualSizesAreThoughtOf(t *testing.T) {
	told := func(what string, ratio float64, k Known) {
		t.Helper()
		var all []string
		for _, m := range Mistakes(k) {
			if math.Abs(m.Ratio-ratio) < 1e-9 {
				all = append(all, m.What)
			}
		}
		assert.Contains(t, all, what)
	}
	for _, teeth := range []float64{15, 16, 18, 20, 24, 30, 32, 36, 40} {
		told("A pulley with "+unit.Full(teeth)+" teeth is configured as 27.", teeth/27, Known{Output: Belt{2, 27}})
	}
	for _, pitch := range []float64{2, 2.032, 2.5, 3, 5, 5.08} {
		told("A belt of "+unit.Full(pitch)+" mm pitch is configured as 7 mm.", pitch/7, Known{Output: Belt{7, 20}})
	}
	for _, lead := range []float64{1, 1.25, 2, 4, 5, 8, 10} {
		told("A screw of "+unit.Full(lead)+" mm lead is configured as 7 mm.", lead/7, Known{Output: Screw{Pitch: 7, Starts: 1}})
	}
	for _, pair := range [][2]float64{{16, 20}, {20, 16}, {18, 20}, {20, 18}} {
		told("A pulley with "+unit.Full(pair[0])+" teeth is configured as "+unit.Full(pair[1])+".", pair[0]/pair[1], Known{})
	}
	for _, pair := range [][2]float64{{3, 2}, {2, 3}, {2.032, 2}, {2, 2.032}} {
		told("A belt of "+unit.Full(pair[0])+" mm pitch is configured as "+unit.Full(pair[1])+" mm.", pair[0]/pair[1], Known{})
	}
	told("The filament diameter is set to 2.85 mm, but you're using 1.75 mm.", 1.75*1.75/2.85/2.85, Known{Volumetric: true})
	told("A single-start screw is configured with four times its lead.", 0.25, Known{})
}

// A size is not taken for itself, nor a lead for its pitch twice over.
func TestWhatIsSetIsNoMistake(t *testing.T) {
	for _, k := range []Known{{Output: Belt{2, 20}}, {Output: Belt{5.08, 36}}, {Output: Screw{Pitch: 8, Starts: 1}}, {Output: Screw{Pitch: 2, Starts: 4}}} {
		for _, m := range Mistakes(k) {
			assert.NotEqual(t, 1., m.Ratio, m.What)
		}
	}
	for _, m := range Mistakes(Known{Output: Screw{Pitch: 2, Starts: 4}}) {
		assert.NotContains(t, m.What, "A screw of 2 mm lead", "that is its pitch, and told as such")
	}
	for _, m := range Mistakes(Known{Output: Screw{Pitch: 2, Starts: 1}}) {
		assert.NotContains(t, m.What, "pitch", "one start: the lead is the pitch")
	}
}

// The ranks are a judgement of what is usual: a change of one is to be meant.
func TestRanks(t *testing.T) {
	ranks := func(k Known) map[string][]int {
		by := map[string][]int{}
		for _, m := range Mistakes(k) {
			if !slices.Contains(by[m.Kind], m.Rank) {
				by[m.Kind] = append(by[m.Kind], m.Rank)
			}
		}
		return by
	}
	nothing := map[string][]int{mixMotor: {1}, mixMicro: {2, 6}, mixUnit: {5}, mixTeeth: {4, 5}, mixPitch: {5, 6}, mixLead: {4}}
	assert.Equal(t, nothing, ranks(Known{}))
	belt := map[string][]int{mixMotor: {1}, mixMicro: {2, 6}, mixUnit: {5}, mixTeeth: {3}, mixPitch: {4}}
	assert.Equal(t, belt, ranks(Known{Output: Belt{2, 20}}))
	screw := map[string][]int{mixMotor: {1}, mixMicro: {2, 6}, mixUnit: {5}, mixLead: {2, 4}}
	assert.Equal(t, screw, ranks(Known{Output: Screw{Pitch: 2, Starts: 4}}))
	feed := map[string][]int{mixMotor: {1}, mixMicro: {2, 6}, mixUnit: {5}, mixGears: {2, 4}, mixDriveSide: {3}, mixArea: {3}}
	assert.Equal(t, feed, ranks(Known{Feed: true, Volumetric: true, Stages: Stages{{12, 54}, {20, 50}}}))
}

// What lies at the limit is let in; of what is as usual, the nearest comes first.
func TestReadRatioAtTheLimit(t *testing.T) {
	a, b := Mistake{Kind: "a", Ratio: 2, Rank: 1}, Mistake{Kind: "b", Ratio: 2, Rank: 1}
	assert.Empty(t, ReadRatio(2, math.Log(2), 0, []Mistake{a}).Fits, "it agrees with 1")
	assert.Equal(t, [][]Mistake{{a}}, ReadRatio(4, math.Log(4)-math.Log(2), 0, []Mistake{a}).Fits)
	assert.Equal(t, [][]Mistake{{a, b}}, ReadRatio(8, math.Log(8)-math.Log(2)-math.Log(2), 0, []Mistake{a, b}).Fits)
	near := Mistake{Kind: "c", Ratio: 2.01, Rank: 1}
	assert.Equal(t, [][]Mistake{{near}, {a}, {b}}, ReadRatio(2.01, 0.1, 0, []Mistake{a, b, near}).Fits, "the first one first where they are as near")
}
