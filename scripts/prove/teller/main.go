// Command teller prints what the calculators say, without a screen:
//
//	scripts/answer 'measure/#v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6'
//	scripts/answer -json 'https://club.example/tools/measure/#v=1&…' …
//	scripts/answer -json - < addresses.txt
//
// An address is that of a sheet, on whatever host, or a text with such a link in it; with
// - addresses are read from standard input, one a line. Printed is what the page says, as
// plain text, or with -json one object a line: see answered.
//
// It exits with 2 where an address names no calculator, after it has answered the others.
package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"striderule/calc"
	"striderule/calc/report"
)

func main() {
	asJSON := flag.Bool("json", false, "print an object a line")
	flag.Usage = func() {
		fmt.Fprintln(os.Stderr, "usage: scripts/answer [-json] ADDRESS ... (- reads addresses from standard input)")
	}
	flag.Parse()
	if flag.NArg() == 0 {
		flag.Usage()
		os.Exit(2)
	}
	tell := asText
	if *asJSON {
		tell = asObject
	}
	ok, err := answerAll(flag.Args(), os.Stdin, os.Stdout, tell)
	if err != nil {
		fmt.Fprintln(os.Stderr, "answer:", err)
		os.Exit(1)
	}
	if !ok {
		os.Exit(2)
	}
}

// answerAll tells of each address. It is false if one of them names no calculator.
func answerAll(addresses []string, in io.Reader, out io.Writer, tell func(io.Writer, answered) error) (ok bool, err error) {
	ok = true
	one := func(address string) error {
		a := of(address)
		ok = ok && a.Page != ""
		return tell(out, a)
	}
	for _, address := range addresses {
		if address != "-" {
			if err := one(address); err != nil {
				return ok, err
			}
			continue
		}
		lines := bufio.NewScanner(in)
		lines.Buffer(nil, 10<<20)
		for lines.Scan() {
			if strings.TrimSpace(lines.Text()) == "" {
				continue
			}
			if err := one(lines.Text()); err != nil {
				return ok, err
			}
		}
		if err := lines.Err(); err != nil {
			return ok, err
		}
	}
	return ok, nil
}

func asText(out io.Writer, a answered) error {
	_, err := fmt.Fprintln(out, a.Text)
	return err
}

func asObject(out io.Writer, a answered) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	return e.Encode(a)
}

// answered is what a page says of a sheet. Values are in the unit beside them, at full
// precision.
type answered struct {
	Page     string            `json:"page"`   // by its name in addresses; empty where the address names none
	Answer   *headline         `json:"answer"` // null while something is missing or wrong
	Figures  map[string]figure `json:"figures"`
	Problems []string          `json:"problems"` // of the entries and the link
	Notes    []string          `json:"notes"`    // what stands out, cautions included
	Text     string            `json:"text"`     // all that the page says
}

// headline is the answer.
type headline struct {
	ID string `json:"id"` // of it among the figures
	figure
	Label    string   `json:"label"`
	Verdict  string   `json:"verdict"`  // leave, change, more, hopeless, either, mistake, parts, interim; empty where there is nothing to decide. Take what you do not know as empty
	Title    string   `json:"title"`    // of the verdict
	Says     string   `json:"says"`     // why, and what to do
	Together bool     `json:"together"` // the value is one of several, and right only beside them: see says
	Keep     *float64 `json:"keep"`     // what to leave in the controller, in the same unit; null where that is the value
}

type figure struct {
	Value float64 `json:"value"`
	U     float64 `json:"u"` // expanded uncertainty; 0 if none is known
	Unit  string  `json:"unit"`
}

// of returns what the page of an address says.
func of(address string) answered {
	a := answered{Figures: map[string]figure{}, Problems: []string{}, Notes: []string{}}
	slug, fragment, mended, ok := calc.ReadAddress(address)
	if !ok {
		slug, fragment, mended, ok = calc.ReadPost(address)
	}
	page, known := calc.PageOf(slug)
	if !ok || !known {
		a.Problems = append(a.Problems, "That isn't a link to one of the calculators: it looks like measure/#v=1&…")
		a.Text = a.Problems[0]
		return a
	}
	form := calc.Load(page, fragment)
	form.Mended(mended)
	report := form.Report()
	a.Page = slug
	a.Answer = headlineOf(report.Answer)
	for _, f := range report.Figures() {
		a.Figures[f.ID] = figure{f.Value, f.U, f.Unit}
	}
	var text []string
	if told := form.Told(); told != "" {
		text = append(text, "Remark that came with the link: "+told)
	}
	if _, says := form.Check(); says != "" {
		text = append(text, says)
	}
	for _, p := range form.Problems() {
		a.Problems = append(a.Problems, p.Says)
	}
	for _, n := range report.Notes() {
		a.Notes = append(a.Notes, n.Kind.String()+": "+n.String())
	}
	a.Text = strings.TrimSpace(strings.Join(slices.Concat(text, a.Problems, []string{report.String()}), "\n"))
	return a
}

func headlineOf(a *report.Answer) *headline {
	if a == nil {
		return nil
	}
	h := &headline{ID: a.ID, figure: figure{a.Value, a.U, a.Unit}, Label: a.Label, Says: a.Says.String()}
	if a.Instead != nil {
		h.Together, h.Says = true, a.Aloud()
	}
	if v := a.Verdict; v != nil {
		h.Verdict, h.Title, h.Says = v.Word(), v.Title, v.Says.String()+" "+h.Says
	}
	if a.Keep != nil {
		h.Keep = &a.Keep.Value
	}
	return h
}
