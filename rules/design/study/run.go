package study

import (
	"context"
	"fmt"
	"strconv"
	"strings"
	"sync"
)

// Part is a contiguous part of a study: the Number-th of Of, from 1.
type Part struct{ Number, Of int }

// Whole is the part that is everything.
var Whole = Part{1, 1}

// ParsePart reads "2/5".
func ParsePart(text string) (Part, error) {
	number, of, _ := strings.Cut(text, "/")
	n, err := strconv.ParseInt(number, 10, 32)
	total, bad := strconv.ParseInt(of, 10, 32)
	p := Part{int(n), int(total)}
	if err != nil || bad != nil || n < 1 || n > total {
		return Part{}, fmt.Errorf("%q is not a part; write 2/5 for the second of five", text)
	}
	return p, nil
}

// Options are the first and last option of the part of a study with total
// options; first is past last where the part has none. The parts of one number
// do not overlap, differ by one option at most, and are everything together.
func (p Part) Options(total int) (first, last int) {
	share, more := total/p.Of, total%p.Of
	first = 1 + (p.Number-1)*share + min(p.Number-1, more)
	last = first + share - 1
	if p.Number <= more {
		last++
	}
	return first, last
}

// chunk is how many options a worker takes at a time, and window how many
// chunks each may be ahead of the one that is waited for. Together they bound
// what is held in memory.
const (
	chunk  = 8
	window = 4
)

// Run works out options first to last with some goroutines, and hands what
// keep makes of each to yield, in order. Where ctx ends, it stops after what was
// begun, and yield has had all up to there without a gap; so too after an error
// of yield, which it returns.
func Run[T any](ctx context.Context, s *Study, first, last, jobs int, keep func(Option) T, yield func(T) error) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	work, order := make(chan batch[T]), make(chan batch[T], jobs*window)
	go deal(ctx, first, last, work, order)
	var workers sync.WaitGroup
	for range jobs {
		workers.Go(func() {
			for b := range work {
				out := make([]T, 0, chunk)
				for i := b.first; i <= b.last; i++ {
					out = append(out, keep(s.Option(i)))
				}
				b.done <- out
			}
		})
	}
	err := drain(order, func(b batch[T]) error {
		for _, v := range <-b.done {
			if err := yield(v); err != nil {
				return err
			}
		}
		return nil
	}, cancel)
	workers.Wait()
	return err
}

// batch is some options in a row, with what is kept of them.
type batch[T any] struct {
	first, last int
	done        chan []T
}

// deal hands out batches to whoever works next, and in order to whoever waits for them.
func deal[T any](ctx context.Context, first, last int, work, order chan<- batch[T]) {
	defer close(order)
	defer close(work)
	for at := first; at <= last && ctx.Err() == nil; at += chunk {
		b := batch[T]{at, min(at+chunk-1, last), make(chan []T, 1)}
		select {
		case work <- b:
			order <- b
		case <-ctx.Done():
		}
	}
}

// drain hands on batches until there are no more; after an error, which stops
// the making of more, it only empties the channel.
func drain[B any](order <-chan B, hand func(B) error, stop func()) error {
	var failed error
	for b := range order {
		if failed != nil {
			continue
		}
		if failed = hand(b); failed != nil {
			stop()
		}
	}
	return failed
}
