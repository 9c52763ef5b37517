package answer

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"
)

// TestProgress: it counts after a second, a few times a second, and is wiped.
func TestProgress(t *testing.T) {
	var b bytes.Buffer
	p := &progress{w: &b, what: "rows", total: 100, started: time.Now()}
	p.tell(1)
	if b.Len() > 0 {
		t.Errorf("within the first second: %q", &b)
	}
	p.started = p.started.Add(-2 * time.Second)
	p.tell(2)
	p.tell(3)
	if got := b.String(); got != "\r2 of 100 rows" {
		t.Errorf("after two seconds: %q", got)
	}
	p.clear()
	if !strings.HasSuffix(b.String(), "\r") {
		t.Errorf("not wiped: %q", &b)
	}
	b.Reset()
	unknown := &progress{w: &b, what: "rows", total: -1, started: time.Now().Add(-2 * time.Second)}
	unknown.tell(5)
	if got := b.String(); got != "\r5 rows" {
		t.Errorf("without a total: %q", got)
	}
	if p := newProgress(io.Discard, "rows", 1); p.w != nil {
		t.Error("it counts where nobody looks")
	}
}
