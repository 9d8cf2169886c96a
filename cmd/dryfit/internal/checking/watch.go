package checking

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"github.com/fsnotify/fsnotify"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// settled is how long the files must be left alone before they are checked
// again: editors write a file in several steps.
const settled = 100 * time.Millisecond

// watching checks again whenever a spec or its standards are saved, and prints
// only what has changed.
type watching struct {
	flags  Flags
	paths  []string
	s      console.Streams
	colour bool
	notify *fsnotify.Watcher
	shown  map[string]string // text by run and file
	begun  bool
}

// watch runs until it is interrupted.
func watch(ctx context.Context, s console.Streams, paths []string, f Flags) error {
	switch {
	case f.Format != "text" || f.Output != "":
		return errors.New("--watch prints text on standard output; it can't be combined with --format or --output")
	case f.Summary:
		return errors.New("--watch prints whole results; it can't be combined with --summary")
	case f.Since != "" || f.Part != "":
		return errors.New("--watch can't be combined with --changed-since or --part")
	}
	for _, p := range paths {
		if p == "-" {
			return errors.New("--watch can't watch standard input")
		}
	}
	colour, err := f.inColour(s)
	if err != nil {
		return err
	}
	notify, err := fsnotify.NewWatcher()
	if err != nil {
		return fmt.Errorf("watch: %w", err)
	}
	defer notify.Close()
	w := &watching{flags: f, paths: paths, s: s, colour: colour, notify: notify, shown: map[string]string{}}
	for {
		// What is saved while a check runs is seen after it: the folders are
		// watched first.
		if err := w.folders(ctx); err != nil {
			return err
		}
		if err := w.check(ctx); err != nil {
			return err
		}
		if err := w.wait(ctx); err != nil {
			return err
		}
	}
}

// check runs once, and prints the specs whose text is new.
func (w *watching) check(ctx context.Context) error {
	c, err := w.flags.prepare(ctx, w.s, w.paths)
	for _, in := range c.inputs { // git may track one in a folder that is passed over
		if err := w.add(filepath.Dir(in.Path)); err != nil {
			return err
		}
	}
	texts := &changedTexts{w: w, report: c.Report, seen: map[string]bool{}}
	if err == nil {
		err = c.run(ctx, w.flags, texts)
	}
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case texts.err != nil:
		return texts.err
	case err != nil && !w.begun:
		return err // bad usage, or nothing to watch
	case err != nil:
		// As where the last spec was deleted: there may be one again.
		fmt.Fprintln(w.s.Err, "dryfit: "+show.Safe(err.Error()))
	}
	w.begun = true
	for key := range w.shown {
		if !texts.seen[key] {
			delete(w.shown, key)
		}
	}
	return nil
}

// changedTexts prints the text of each file of each run, where it is not the one that was
// printed of it last.
type changedTexts struct {
	w      *watching
	report report.Report
	run    report.Run
	runs   int
	seen   map[string]bool
	err    error // of printing
}

func (t *changedTexts) Begin(run report.Run) error {
	t.run = run
	t.runs++
	return nil
}

func (t *changedTexts) Add(s *review.Assessment) error {
	var b bytes.Buffer
	one := t.report
	one.Runs = []report.Run{{Standards: t.run.Standards, Assessments: []*review.Assessment{s}}}
	if err := report.Write(&b, one, report.Text(t.w.colour)); err != nil {
		return err
	}
	key := fmt.Sprint(t.runs, " ", s.Path)
	t.seen[key] = true
	if t.w.shown[key] == b.String() {
		return nil
	}
	t.w.shown[key] = b.String()
	if _, err := t.w.s.Out.Write(b.Bytes()); err != nil {
		t.err = fmt.Errorf("write standard output: %w", err)
	}
	return t.err
}

func (*changedTexts) End(report.Run) error { return nil }
func (*changedTexts) Close() error         { return nil }

// folders watches every folder that a spec or its standards may be in: those
// under the paths, and those above each spec up to the root. Folders and not
// files, since editors save by putting a new file in the old one's place.
func (w *watching) folders(ctx context.Context) error {
	finders, err := w.flags.finders(ctx)
	if err != nil {
		return err
	}
	_, root := source.Whereabouts()
	paths, err := source.OrFolders(finders, w.paths)
	if err != nil {
		return err
	}
	for _, p := range append(paths, w.flags.Standards...) {
		folder := filepath.Dir(p)
		if source.IsFolder(p) {
			folder = p
		}
		if source.IsFolder(p) || source.IsStandards(p) {
			if err := w.below(folder); err != nil {
				return err
			}
		}
		if err := w.above(folder, root); err != nil {
			return err
		}
	}
	return nil
}

// below watches a folder and all under it, save those that a check passes over.
func (w *watching) below(folder string) error {
	return filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || !d.IsDir():
			return nil // one that went meanwhile, or can't be read, which the check says
		case path != folder && source.Aside(d.Name()):
			return fs.SkipDir
		default:
			return w.add(path)
		}
	})
}

// above watches a folder and those that it is in, up to the root.
func (w *watching) above(folder, root string) error {
	at, err := filepath.Abs(folder)
	if err != nil {
		return nil
	}
	for {
		if err := w.add(at); err != nil {
			return err
		}
		if root == "" || at == root || at == filepath.Dir(at) {
			return nil
		}
		at = filepath.Dir(at)
	}
}

// add watches one folder; one that is not there any more is passed over.
func (w *watching) add(folder string) error {
	err := w.notify.Add(folder)
	switch {
	case err == nil, errors.Is(err, fs.ErrNotExist):
		return nil
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EMFILE):
		return fmt.Errorf("watch %s: the system's limit of watched folders is reached; name fewer folders, or raise the limit", folder)
	default:
		return fmt.Errorf("watch %s: %w", folder, err)
	}
}

// wait returns once something that counts has changed and then been left alone
// for a moment.
func (w *watching) wait(ctx context.Context) error {
	quiet := time.NewTimer(time.Hour)
	quiet.Stop()
	defer quiet.Stop()
	for {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case e, ok := <-w.notify.Events:
			if !ok {
				return errors.New("watch: the system stopped it")
			}
			if w.counts(e) {
				quiet.Reset(settled)
			}
		case err := <-w.notify.Errors:
			if !errors.Is(err, fsnotify.ErrEventOverflow) {
				return fmt.Errorf("watch: %w", err)
			}
			quiet.Reset(settled) // some were missed: look at all
		case <-quiet.C:
			return nil
		}
	}
}

// counts reports whether an event may change a check: of a spec, of standards, of
// what git ignores, or of a folder that comes or goes.
func (w *watching) counts(e fsnotify.Event) bool {
	if e.Op == fsnotify.Chmod {
		return false
	}
	name := filepath.Base(e.Name)
	if strings.HasSuffix(name, source.Extension) || name == standards.FileName || name == ".gitignore" {
		return true
	}
	for _, file := range w.flags.Standards {
		if filepath.Base(file) == name {
			return true
		}
	}
	if e.Has(fsnotify.Remove) || e.Has(fsnotify.Rename) {
		return filepath.Ext(name) == "" // it may have been a folder
	}
	info, err := os.Stat(e.Name)
	return err == nil && info.IsDir()
}
