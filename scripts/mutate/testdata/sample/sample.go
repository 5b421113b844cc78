// Package sample has something for each kind of mutant.
package sample

import (
	"errors"
	"strconv"
)

const limit = 40

// Larger returns the larger of two numbers.
func Larger(a, b int) int {
	if a > b { // >= gives the same
		return a
	}
	return b
}

// Sum adds all numbers below n; with i-- it does not end.
func Sum(n int) int {
	sum := 0
	for i := 0; i < n; i++ {
		sum += i
	}
	return sum
}

// Price is of a weight, for those who have a card.
func Price(weight float64, card, old bool) (price float64, note string) {
	note = "full"
	price = 2.5 * weight
	if card && !old || weight == 0 {
		price /= 2
		note = "half"
	}
	return price, note
}

// Read reads a number, up to 40.
func Read(text string) (int, error) {
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		return 0, err
	}
	if n > limit {
		return 0, errors.New("too large")
	}
	return int(n), nil
}

// Untried is not reached by any test.
func Untried(n int) int { return -n }
