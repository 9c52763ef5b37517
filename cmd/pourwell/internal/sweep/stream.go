package sweep

import (
	"fmt"
	"io"
	"runtime"
	"sync"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// An Encoder appends one row to buf as it is to be written.
type Encoder func(buf []byte, row *Row) []byte

// Stream runs all rows on all processors and writes them in order. Memory
// stays flat however many there are. Progress, if not nil, is told how many rows are written.
func (r *Rows) Stream(w io.Writer, encode Encoder, progress func(done int)) (Tally, error) {
	return r.run(encode, func(p *part) error {
		_, err := w.Write(p.buf)
		return err
	}, progress)
}

// Collect runs all rows and returns them in order. If there are more than most
// it returns a [*calc.UsageError], as soon as it sees them.
func (r *Rows) Collect(most int, progress func(done int)) ([]Row, Tally, error) {
	tooMany := &calc.UsageError{
		What: fmt.Sprintf("more than %d rows are too many to read or to draw", most),
		Hint: "add --format csv or json",
	}
	if n := r.Len(); n > most {
		tooMany.What = fmt.Sprintf("%d rows are too many to read or to draw", n)
		tooMany.Hint += ", or take a larger step"
		return nil, Tally{}, tooMany
	}
	var all []Row
	tally, err := r.run(nil, func(p *part) error {
		if len(all)+len(p.rows) > most {
			return tooMany
		}
		all = append(all, p.rows...)
		return nil
	}, progress)
	return all, tally, err
}

// A part is a job on its way: run by a worker, then put out in its turn.
type part struct {
	job   job
	err   error // of the source; ends the stream
	ready chan struct{}
	buf   []byte
	rows  []Row
	tally Tally
}

// run keeps every processor at work and calls emit for the parts in order.
func (r *Rows) run(encode Encoder, emit func(*part) error, progress func(done int)) (Tally, error) {
	workers := runtime.GOMAXPROCS(0)
	ahead := 4 * workers // parts in flight
	queue, work := make(chan *part, ahead), make(chan *part, ahead)
	stop := make(chan struct{})
	var group sync.WaitGroup
	for range workers {
		group.Add(1)
		go func() {
			defer group.Done()
			r.worker(work, encode)
		}()
	}
	go r.feed(queue, work, stop)
	var total Tally
	var failed error
	for p := range queue {
		<-p.ready
		if failed != nil {
			continue
		}
		if failed = p.err; failed == nil {
			failed = emit(p)
		}
		total.add(&p.tally)
		buffers.Put(&p.buf)
		if failed != nil {
			close(stop)
			continue
		}
		if progress != nil {
			progress(total.Rows)
		}
	}
	group.Wait()
	return total, failed
}

// buffers are reused from part to part.
var buffers = sync.Pool{New: func() any { return new([]byte) }}

// feed hands each part both to the workers and, in order, to the writer.
func (r *Rows) feed(queue, work chan<- *part, stop <-chan struct{}) {
	defer close(queue)
	defer close(work)
	for {
		select {
		case <-stop:
			return
		default:
		}
		j, err := r.source.next()
		if j == nil && err == nil {
			return
		}
		p := &part{job: j, err: err, ready: make(chan struct{})}
		select {
		case <-stop:
			return
		case queue <- p:
		}
		if err != nil {
			close(p.ready)
			return
		}
		work <- p
	}
}

func (r *Rows) worker(work <-chan *part, encode Encoder) {
	v, run := r.plan.worker()
	var out calc.Result
	row := Row{Cells: make([]calc.Value, len(r.Columns))}
	for p := range work {
		p.buf = (*buffers.Get().(*[]byte))[:0]
		for i := range p.job.len() {
			if encode == nil {
				row.Cells = make([]calc.Value, len(r.Columns))
			}
			v.Assign(r.plan.Base)
			out.Reset()
			if row.Err = p.job.fill(i, v); row.Err == nil {
				row.Err = run(v, &out)
			}
			r.fillRow(&row, v, &out)
			for c := range r.Columns {
				if n := r.Columns[c].copied; n > 0 {
					row.Cells[c].Text, row.Cells[c].IsText = p.job.text(i, n-1), true
				}
			}
			p.tally.count(row.Err, v, &out)
			if encode == nil {
				p.rows = append(p.rows, row)
			} else {
				p.buf = encode(p.buf, &row)
			}
		}
		close(p.ready)
	}
}
