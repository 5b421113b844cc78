package report

// A Remark stands beside a field: how its text was read, or what it does not agree with.
type Remark struct {
	Key   string
	Row   int // in a group, from 0
	Says  string
	Doubt bool
}

// Remarks are those of a report in the making.
type Remarks []Remark

// Read says how a cell was read.
func (r *Remarks) Read(key string, row int, says string) {
	*r = append(*r, Remark{Key: key, Row: row, Says: says})
}

// Doubt says what a cell does not agree with.
func (r *Remarks) Doubt(key string, row int, says string) {
	*r = append(*r, Remark{Key: key, Row: row, Says: says, Doubt: true})
}
