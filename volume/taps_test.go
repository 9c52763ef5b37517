package volume

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

func TestQueueTextbooks(t *testing.T) {
	for _, file := range []string{"erlang_c.csv", "erlang_c_memory.csv"} {
		for _, row := range checktest.Table(t, file) {
			// The rates are scaled so that every serving takes 30 s, within the
			// range of a bar.
			scale := row.Number("served") / 120
			arrivals, served := row.Number("arrivals")/scale, row.Number("served")/scale
			b := Bar{Guests: 100, PerHour: arrivals / 100, PourTime: hours(1 / served), Taps: int(row.Number("servers"))}
			q, err := b.Queue()
			if err != nil {
				t.Fatal(row.Text("problem"), err)
			}
			got := map[string]float64{
				"C": q.Waits, "Lq": q.Queue, "L": q.Queue + q.load,
				"Wq": q.Mean.Hours() / scale, "W": (q.Mean.Hours() + 1/served) / scale,
				"P0": stepValue(t, q.Steps(), "P0"),
			}[row.Text("quantity")]
			if want := row.Number("printed"); math.Abs(got-want) > row.Number("tolerance") {
				t.Errorf("%s: %s = %.6g, printed %s", row.Text("problem"), row.Text("quantity"), got, row.Text("printed"))
			}
		}
	}
}

func hours(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }

func stepValue(t *testing.T, steps []Step, symbol string) float64 {
	t.Helper()
	for _, s := range steps {
		if s.Symbol == symbol {
			return s.Value
		}
	}
	t.Fatalf("no step %s", symbol)
	return 0
}

// Erlang's loss formula is the chance of c over the chance of at most c in a
// Poisson count of mean a, which gonum gives by another way; to 10 000 taps.
func TestQueueManyTaps(t *testing.T) {
	for _, taps := range []int{1, 2, 10, 100, 1000, 10000} {
		for _, busy := range []float64{0.3, 0.7, 0.9} {
			load := busy * float64(taps)
			b := Bar{Guests: 100000, PourTime: 30 * time.Second, Taps: taps, PerHour: load / 30 * 3600 / 100000}
			q, err := b.Queue()
			if err != nil {
				t.Fatal(err)
			}
			p := distuv.Poisson{Lambda: load}
			blocked := p.Prob(float64(taps)) / p.CDF(float64(taps))
			want := float64(taps) * blocked / (float64(taps) - load*(1-blocked))
			if math.Abs(q.Waits-want) > 1e-9*want+1e-300 {
				t.Errorf("%d taps, %g busy: C = %g, by distuv %g", taps, busy, q.Waits, want)
			}
			if math.Abs(q.Busy-busy) > 1e-12 {
				t.Errorf("%d taps busy %g, want %g", taps, q.Busy, busy)
			}
		}
	}
}

// One server with constant servings: Pollaczek and Khinchine's wait is exactly
// half of the exponential one. Closed form: ρ s / 2(1 − ρ).
func TestQueueConstantService(t *testing.T) {
	b := Bar{Guests: 96, PerHour: 1, PourTime: 30 * time.Second, Taps: 1}
	q, err := b.Queue()
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.8 * 30 / (2 * 0.2); math.Abs(q.Least.Seconds()-want) > 1e-6 {
		t.Errorf("least wait %g s, want %g", q.Least.Seconds(), want)
	}
}

// A hundred guests, two servings an hour, half a minute each: three taps.
func TestTapsForAWait(t *testing.T) {
	q, err := DefaultBar(100).Queue()
	if err != nil || q.Taps != 3 || q.Late > 0.1 {
		t.Fatalf("%d taps, %v", q.Taps, err)
	}
	b := q.Bar
	b.Taps = q.Taps - 1
	if fewer, err := b.Queue(); err != nil || fewer.Late <= 0.1 {
		t.Errorf("two taps: %g wait too long, %v", fewer.Late, err)
	}
	rush, err := q.Bar.FirstHalfHour().Queue()
	if err != nil || rush.Taps < q.Taps || rush.load != 1.3*q.load {
		t.Errorf("first half hour: %d taps, load %g for %g, %v", rush.Taps, rush.load, q.load, err)
	}
	self, err := DefaultBar(100).SelfService().Queue()
	if err != nil || math.Abs(self.load-1.5*q.load) > 1e-12 {
		t.Errorf("self-service: load %g for %g, %v", self.load, q.load, err)
	}
	if left := b.Backlog(1, 30*time.Minute); math.Abs(left-(100-60)) > 1e-9 {
		t.Errorf("one tap leaves %g of 100 waiting, want 40", left)
	}
	if c := DefaultCrowd(60, time.Hour).Bar(); c.Guests != 60 || c.PerHour != 1 {
		t.Errorf("bar of the crowd: %+v", c)
	}
}

func TestQueueProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := DefaultBar(rapid.IntRange(1, 20000).Draw(t, "guests"))
		b.PerHour = rapid.Float64Range(0, 20).Draw(t, "per hour")
		b.Wait = time.Duration(rapid.Int64Range(0, int64(time.Hour)).Draw(t, "wait"))
		b.Within = rapid.Float64Range(0, 0.999).Draw(t, "within")
		q, err := b.Queue()
		if err != nil {
			t.Fatal(err)
		}
		if q.Late > 1-b.Within || q.Waits < q.Late || q.Waits > 1 || q.Busy >= 1 || q.Mean < 0 || q.Least > q.Mean {
			t.Fatalf("%+v", q)
		}
		for _, s := range q.Steps() {
			if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
				t.Fatalf("%s is %g", s.Name, s.Value)
			}
		}
		more := b
		more.Taps = q.Taps + 1
		r, err := more.Queue()
		if err != nil || r.Mean > q.Mean {
			t.Fatalf("one tap more: %v for %v, %v", r.Mean, q.Mean, err)
		}
		// Little's law: guests waiting are arrivals times wait.
		if math.Abs(q.Queue-b.rate()*q.Mean.Seconds()) > 1e-6*(1+q.Queue) {
			t.Fatalf("%g waiting, %g by Little's law", q.Queue, b.rate()*q.Mean.Seconds())
		}
	})
}

func TestQueueRefuses(t *testing.T) {
	b := DefaultBar(200)
	b.Taps = 3
	if q, err := b.Queue(); !errors.Is(err, ErrNever) || !math.IsNaN(q.Waits) {
		t.Errorf("too few taps: %v, %v", q.Waits, err)
	}
	b = DefaultBar(180) // a load of exactly three
	b.Taps = 3
	if _, err := b.Queue(); !errors.Is(err, ErrNever) {
		t.Errorf("taps that are just busy: %v", err)
	}
	var r *RangeError
	for name, change := range map[string]func(*Bar){
		"no guests":  func(b *Bar) { b.Guests = 0 },
		"NaN":        func(b *Bar) { b.PerHour = math.NaN() },
		"no service": func(b *Bar) { b.PourTime, b.Change = 0, 0 },
		"certainty":  func(b *Bar) { b.Within = 1 },
		"too much":   func(b *Bar) { b.Guests, b.PerHour = 1e6, 20 },
		"wait":       func(b *Bar) { b.Wait = -1 },
		"rush":       func(b *Bar) { b.Rush = 3 },
	} {
		b := DefaultBar(100)
		change(&b)
		if _, err := b.Queue(); !errors.As(err, &r) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestQueueAllocatesNothing(t *testing.T) {
	b := DefaultBar(100)
	if n := testing.AllocsPerRun(100, func() { _, _ = b.Queue() }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkQueue(b *testing.B) {
	bar := DefaultBar(100)
	for b.Loop() {
		_, _ = bar.Queue()
	}
}

func BenchmarkQueue9000(b *testing.B) {
	bar := DefaultBar(540000)
	for b.Loop() {
		if _, err := bar.Queue(); err != nil {
			b.Fatal(err)
		}
	}
}

// A hundred beer drinkers at the meadow party, two glasses an hour each.
func ExampleBar_Queue() {
	q, err := DefaultBar(100).Queue()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d taps: %.2f wait, %.2g s on average\n", q.Taps, q.Waits, q.Mean.Seconds())
	// Output: 3 taps: 0.30 wait, 6.7 s on average
}
