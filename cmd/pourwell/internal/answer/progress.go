package answer

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"
)

// A progress counts aloud on a terminal once a run takes longer than a second.
type progress struct {
	w       io.Writer // nil if there is nobody to tell
	what    string
	total   int // −1 if unknown
	mu      sync.Mutex
	started time.Time
	last    time.Time
}

func newProgress(w io.Writer, what string, total int) *progress {
	p := &progress{what: what, total: total, started: time.Now()}
	if f, ok := w.(*os.File); ok {
		if info, err := f.Stat(); err == nil && info.Mode()&os.ModeCharDevice != 0 {
			p.w = w
		}
	}
	return p
}

// tell is told how many are done; any goroutine may call it.
func (p *progress) tell(done int) {
	if p.w == nil {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	now := time.Now()
	if now.Sub(p.started) < time.Second || now.Sub(p.last) < time.Second/5 {
		return
	}
	p.last = now
	if p.total >= 0 {
		fmt.Fprintf(p.w, "\r%d of %d %s", done, p.total, p.what)
	} else {
		fmt.Fprintf(p.w, "\r%d %s", done, p.what)
	}
}

// clear wipes the line, if one was written.
func (p *progress) clear() {
	if p.w != nil && !p.last.IsZero() {
		fmt.Fprintf(p.w, "\r%60s\r", "")
	}
}
