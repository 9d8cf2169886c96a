package calculix

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"dryfit/rules/kernel/frame"
)

// Answer is what CalculiX found, for the frame's own nodes.
type Answer struct {
	Forces   []float64       // by spring, tension positive
	Supports []float64       // by support, on the frame along its direction
	Moved    []float64       // by node, along x and y in turn
	Moments  map[int]float64 // by node
}

// Solve runs the program ccx in a folder.
func (d Deck) Solve(ccx, folder string) (*Answer, error) {
	written := d.write()
	if err := os.WriteFile(filepath.Join(folder, "frame.inp"), written.Bytes(), 0o600); err != nil {
		return nil, err
	}
	run := exec.Command(ccx, "frame")
	run.Dir = folder
	run.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	if out, err := run.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, out[max(0, len(out)-2000):])
	}
	printed, err := os.ReadFile(filepath.Join(folder, "frame.dat"))
	if err != nil {
		return nil, err
	}
	results, err := os.ReadFile(filepath.Join(folder, "frame.frd"))
	if err != nil {
		return nil, err
	}
	return d.read(printed, results, written.loads)
}

// read takes what the program printed. The force that it prints of a node is all that
// acts on it from outside, the load among it: a support has the rest.
func (d Deck) read(printed, results []byte, loads []frame.Vector) (*Answer, error) {
	var a Answer
	moved, forces := table(printed, "displacements"), table(printed, "forces")
	for i, s := range d.Model.Springs {
		f, ok := forces[firstAnchor+i]
		if !ok {
			return nil, fmt.Errorf("no force of spring %d", i)
		}
		a.Forces = append(a.Forces, f[0]*s.Toward.X+f[1]*s.Toward.Y)
	}
	for _, s := range d.Model.Supports {
		on := [3]float64{loads[s.Node].X, loads[s.Node].Y}
		a.Supports = append(a.Supports, forces[s.Node+1][s.Direction-1]-on[s.Direction-1])
	}
	for i := range d.Model.Nodes {
		u, ok := moved[i+1]
		if !ok {
			return nil, fmt.Errorf("no movement of node %d", i)
		}
		a.Moved = append(a.Moved, u[0], u[1])
	}
	a.Moments = sectionMoments(results)
	return &a, nil
}

// table reads the tables of a .dat file whose heading begins with word: three
// values a node, the last of those printed.
func table(printed []byte, word string) map[int][3]float64 {
	out := make(map[int][3]float64)
	inside := false
	for line := range bytes.Lines(printed) {
		text := string(line)
		if strings.Contains(text, " for set ") {
			inside = strings.HasPrefix(strings.TrimSpace(text), word)
		} else if fields := strings.Fields(text); inside && len(fields) == 4 {
			if node, err := strconv.Atoi(fields[0]); err == nil {
				out[node] = [3]float64{number(fields[1]), number(fields[2]), number(fields[3])}
			}
		}
	}
	return out
}

// sectionMoments reads the bending moment in the plane, the fifth of the section
// forces, by node from a .frd file: columns of twelve after a node of ten.
func sectionMoments(results []byte) map[int]float64 {
	const first, column = 13, 12
	moments := make(map[int]float64)
	inside := false
	for line := range bytes.Lines(results) {
		text := string(line)
		switch {
		case strings.HasPrefix(text, " -4"):
			inside = strings.Contains(text, "STRESS")
		case inside && strings.HasPrefix(text, " -1"):
			if node, err := strconv.Atoi(strings.TrimSpace(text[3:first])); err == nil {
				moments[node-1] = number(text[first+4*column : first+5*column])
			}
		}
	}
	return moments
}

// number reads one of CalculiX's; what is none becomes NaN, which no comparison
// passes.
func number(text string) float64 {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		return math.NaN()
	}
	return v
}
