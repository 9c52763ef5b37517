package catalog

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

// readReadings reads the readings typed as TEMPERATURE:TIME.
func readReadings(in *calc.Values) ([]thermal.Reading, error) {
	var all []thermal.Reading
	for _, text := range in.Texts("reading") {
		temperature, when, ok := strings.Cut(text, ":")
		if !ok {
			return nil, &calc.UsageError{What: fmt.Sprintf("--reading %q is not TEMPERATURE:TIME", text), Hint: "for example --reading 38F:0h --reading 48F:3h"}
		}
		r, err := reading(when, temperature)
		if err != nil {
			return nil, usage("reading", err)
		}
		all = append(all, r)
	}
	if len(all) < 2 {
		return nil, &calc.UsageError{What: "one reading does not show how fast it warms", Hint: "add a later --reading"}
	}
	return all, nil
}

// reading reads a time and a temperature.
func reading(when, temperature string) (thermal.Reading, error) {
	at, err := readMoment(when)
	if err != nil {
		return thermal.Reading{}, err
	}
	k, err := quantity.Parse(quantity.Temperature, temperature)
	return thermal.Reading{Time: at, Temperature: thermal.Kelvin(k)}, err
}

// readMoment reads a time since the start, a time of day, or a date and time.
func readMoment(text string) (time.Duration, error) {
	text = strings.TrimSpace(text)
	for _, layout := range []string{"15:04", "15:04:05", "2006-01-02 15:04", "2006-01-02 15:04:05", "2006-01-02T15:04:05", time.RFC3339} {
		if t, err := time.Parse(layout, text); err == nil {
			if t.Year() > 0 { // a time of day has no year
				return t.Sub(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)), nil
			}
			return t.Sub(time.Date(0, 1, 1, 0, 0, 0, 0, time.UTC)), nil
		}
	}
	return readTime(text)
}

// readLog reads a file of rows TIME,TEMPERATURE. A first row that is no
// reading is a heading, and times of day may pass midnight.
func readLog(in *calc.Values) ([]thermal.Reading, error) {
	name, data, err := calc.ReadFile(in.Text("log"), os.Stdin)
	if err != nil {
		return nil, calc.FileError("--log", err)
	}
	rows := csv.NewReader(bytes.NewReader(data))
	rows.Comment, rows.FieldsPerRecord, rows.TrimLeadingSpace = '#', -1, true
	var all []thermal.Reading
	for first := true; ; first = false {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			return all, nil
		}
		if err != nil {
			return nil, &calc.UsageError{What: fmt.Sprintf("--log %s: %v", name, err)}
		}
		line, _ := rows.FieldPos(0)
		if len(row) < 2 {
			return nil, &calc.UsageError{What: fmt.Sprintf("--log %s: line %d is not TIME,TEMPERATURE", name, line), Hint: "for example 90min,4.5C"}
		}
		r, err := reading(row[0], row[1])
		switch {
		case err != nil && first:
			continue
		case err != nil:
			return nil, &calc.UsageError{What: fmt.Sprintf("--log %s: line %d: %v", name, line, err), Hint: "rows of TIME,TEMPERATURE, for example 90min,4.5C"}
		}
		if n := len(all); n > 0 && r.Time < all[n-1].Time && r.Time+24*time.Hour > all[n-1].Time && timeOfDay(row[0]) {
			r.Time += 24 * time.Hour
		}
		all = append(all, r)
	}
}

// timeOfDay reports whether text is a time of day without a date.
func timeOfDay(text string) bool {
	return len(strings.TrimSpace(text)) <= len("15:04:05") && strings.Contains(text, ":")
}
