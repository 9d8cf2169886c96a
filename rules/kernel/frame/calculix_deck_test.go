package frame_test

import (
	"bufio"
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules/kernel/frame"
)

// outsideAnswer is what the outside solver found.
type outsideAnswer struct {
	forces  []float64       // by spring, tension positive
	moved   []float64       // by node, along x and y in turn
	moments map[int]float64 // by node
}

// firstAnchor numbers the anchors of the springs, above all nodes of a rib.
const firstAnchor = 10001

// deck is the rib as input of CalculiX: linear beams, which it expands to
// bricks; springs as springs to an anchor, with a table of force against
// lengthening for the one-sided; a misfit as a movement of the anchor.
func (rib outsideRib) deck() []byte {
	var b bytes.Buffer
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	last := len(rib.points)

	line("*NODE, NSET=NAXIS")
	for i, p := range rib.points {
		line("%d, %.12g, %.12g, 0", i+1, p.X, p.Y)
	}
	line("*ELEMENT, TYPE=B31, ELSET=ERIB")
	for i := 1; i < last; i++ {
		line("%d, %d, %d", i, i, i+1)
	}
	line("*MATERIAL, NAME=MRIB\n*ELASTIC\n%g, 0\n*DENSITY\n%g", outsideE, outsideWeight/(rib.breadth*rib.depth))
	line("*BEAM SECTION, ELSET=ERIB, MATERIAL=MRIB, SECTION=RECT\n%g, %g\n0, 0, 1", rib.breadth, rib.depth)
	line("*NODE, NSET=NANCHOR")
	for i, s := range rib.springs {
		p := rib.points[s.Node]
		line("%d, %.12g, %.12g, 0", firstAnchor+i, p.X+s.Toward.X, p.Y+s.Toward.Y)
	}
	for i, s := range rib.springs {
		line("*ELEMENT, TYPE=SPRINGA, ELSET=ES%d\n%d, %d, %d", i, firstAnchor+i, s.Node+1, firstAnchor+i)
		line("*SPRING, ELSET=ES%d, NONLINEAR\n%s", i, rib.table(i))
	}
	line("*BOUNDARY\nNAXIS, 3, 3\n%d, 1, 1\nNANCHOR, 1, 3", last/2+1)
	line("*STEP, NLGEOM\n*STATIC\n*DLOAD\nERIB, GRAV, 1, 0, -1, 0")
	for _, l := range rib.loads {
		line("*CLOAD\n%d, 1, %g\n%d, 2, %g", l.Node+1, l.X, l.Node+1, l.Y)
	}
	for _, f := range rib.misfits {
		toward := rib.springs[f.Spring].Toward
		line("*BOUNDARY\n%d, 1, 1, %g\n%d, 2, 2, %g", firstAnchor+f.Spring, -f.Longer*toward.X,
			firstAnchor+f.Spring, -f.Longer*toward.Y)
	}
	line("*NODE PRINT, NSET=NANCHOR\nRF\n*NODE PRINT, NSET=NAXIS\nU")
	line("*EL FILE, SECTION FORCES, OUTPUT=2D\nS\n*END STEP")
	return b.Bytes()
}

// table is the force of spring i against its lengthening, after the empty line
// that the direction would stand on; a number without a point would be one.
func (rib outsideRib) table(i int) string {
	pull, push := rib.springs[i].Stiffness, -rib.springs[i].Stiffness
	if rib.springs[i].Sense == frame.TensionOnly || slices.Contains(rib.without, i) {
		push = 0
	}
	if rib.springs[i].Sense == frame.CompressionOnly || slices.Contains(rib.without, i) {
		pull = 0
	}
	return fmt.Sprintf("\n%.1f, -1.\n0., 0.\n%.1f, 1.", push, pull)
}

func (rib outsideRib) runCalculiX(t *testing.T, ccx string) outsideAnswer {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "rib.inp"), rib.deck(), 0o600))
	run := exec.Command(ccx, "rib")
	run.Dir = dir
	run.Env = append(os.Environ(), "OMP_NUM_THREADS=1")
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out[max(0, len(out)-2000):])

	var a outsideAnswer
	for i, f := range printed(t, filepath.Join(dir, "rib.dat"), "forces") {
		a.forces = append(a.forces, f[0]*rib.springs[i].Toward.X+f[1]*rib.springs[i].Toward.Y)
	}
	for _, u := range printed(t, filepath.Join(dir, "rib.dat"), "displacements") {
		a.moved = append(a.moved, u[0], u[1])
	}
	a.moments = sectionMoments(t, filepath.Join(dir, "rib.frd"))
	require.Len(t, a.forces, len(rib.springs))
	require.Len(t, a.moved, 2*len(rib.points))
	return a
}

// printed reads the last table of a .dat file whose heading begins with word:
// three values a node, in the order of the nodes.
func printed(t *testing.T, path, word string) (values [][3]float64) {
	t.Helper()
	inside := false
	eachLine(t, path, func(text string) {
		if strings.Contains(text, " for set ") {
			if inside = strings.HasPrefix(strings.TrimSpace(text), word); inside {
				values = nil
			}
		} else if fields := strings.Fields(text); inside && len(fields) == 4 {
			values = append(values, [3]float64{number(t, fields[1]), number(t, fields[2]), number(t, fields[3])})
		}
	})
	return values
}

// sectionMoments reads the bending moment in the plane, the fifth of the section
// forces, by node from a .frd file: columns of twelve after a node of ten.
func sectionMoments(t *testing.T, path string) map[int]float64 {
	t.Helper()
	const first, column = 13, 12
	moments := make(map[int]float64)
	inside := false
	eachLine(t, path, func(text string) {
		switch {
		case strings.HasPrefix(text, " -4"):
			inside = strings.Contains(text, "STRESS")
		case inside && strings.HasPrefix(text, " -1"):
			node, err := strconv.Atoi(strings.TrimSpace(text[3:first]))
			require.NoError(t, err)
			moments[node-1] = number(t, strings.TrimSpace(text[first+4*column:first+5*column]))
		}
	})
	return moments
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

func eachLine(t *testing.T, path string, do func(string)) {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		do(lines.Text())
	}
	require.NoError(t, lines.Err())
}
