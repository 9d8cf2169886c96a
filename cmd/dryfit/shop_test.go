package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/internal/outside"
)

// packaged runs the shop command on specs, whatever the verdict, and returns the
// folders.
func packaged(t *testing.T, specs ...string) (folders []string) {
	t.Helper()
	for _, spec := range specs {
		folder := filepath.Join(t.TempDir(), "package")
		var out, errs bytes.Buffer
		status := run(context.Background(), []string{"shop", spec, "--on", "2026-11-25", "--even-so", "--output", folder}, console.Streams{In: strings.NewReader(""), Out: &out, Err: &errs})
		require.LessOrEqual(t, status, exit.Fail, "%s: %s", spec, &errs)
		folders = append(folders, folder)
	}
	return folders
}

// shopSpecs are whole ceilings of every profile, construction of ribs and system of
// units, one of each.
func shopSpecs(t *testing.T) (out []string) {
	specs, err := filepath.Glob("../../testdata/specs/*.ceiling.toml")
	require.NoError(t, err)
	kind, taken := regexp.MustCompile(`(?m)^\s*(profile|construction|units)\s*=\s*"([^"]*)"`), map[string]bool{}
	profiles := map[string]bool{}
	for _, spec := range specs {
		text, err := os.ReadFile(spec)
		require.NoError(t, err)
		key := ""
		for _, m := range kind.FindAllStringSubmatch(string(text), -1) {
			key += m[2] + " "
			profiles[m[2]] = profiles[m[2]] || m[1] == "profile"
		}
		if !taken[key] {
			taken[key], out = true, append(out, spec)
		}
	}
	for _, p := range []string{"segmental", "semicircular", "elliptical", "three-centred", "pointed", "flat"} {
		assert.True(t, profiles[p], p)
	}
	return out
}

// entities is what a reader finds in a file: how many of each kind on each layer.
type entities struct {
	Version string         `json:"version"`
	Layers  []string       `json:"layers"`
	Counts  map[string]int `json:"counts"`
	Closed  int            `json:"closed"`
	Size    []float64      `json:"size"`
	Errors  []string       `json:"errors"`
}

// readDXF has an outside program read files.
func readDXF(t *testing.T, program, script string, files []string) (out []entities) {
	t.Helper()
	said, err := exec.Command(program, append([]string{script}, files...)...).Output()
	var failed *exec.ExitError
	if errors.As(err, &failed) {
		t.Fatalf("%s: %s", script, failed.Stderr)
	}
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(said, &out), "%s", said)
	require.Len(t, out, len(files))
	return out
}

// counted is our own count of a file's entities.
func counted(t *testing.T, file string) map[string]int {
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	out := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^  0\r\n(LINE|ARC|CIRCLE|POLYLINE|TEXT)\r\n  8\r\n([A-Z]+)\r\n`).FindAllSubmatch(text, -1) {
		out[string(m[1])+" "+string(m[2])]++
	}
	return out
}

// Two general readers find in every DXF, of every profile, the entities that were
// written, each pattern as one closed outline, and no error.
func TestGeneralReadersReadEveryDXF(t *testing.T) {
	long(t)
	const validators = "../../.ci/validators"
	const python = "/usr/bin/python3"
	if exec.Command(python, "-c", "import ezdxf").Run() != nil {
		outside.Missing(t, "ezdxf (package python3-ezdxf)")
	}
	node := outside.Modules(t, validators, "dxf-parser")
	var files []string
	for _, folder := range packaged(t, shopSpecs(t)...) {
		found, err := filepath.Glob(filepath.Join(folder, "*.dxf"))
		require.NoError(t, err)
		files = append(files, found...)
	}
	require.Greater(t, len(files), 50)
	one := readDXF(t, python, filepath.Join(validators, "dxf.py"), files)
	other := readDXF(t, node, filepath.Join(validators, "dxf.mjs"), files)
	for i, file := range files {
		name, want := filepath.Base(file), counted(t, file)
		assert.Equal(t, want, one[i].Counts, name)
		assert.Equal(t, want, other[i].Counts, name)
		assert.Equal(t, [2]string{"AC1009", "AC1009"}, [2]string{one[i].Version, other[i].Version})
		assert.Equal(t, [3]int{1, 1, 1}, [3]int{want["POLYLINE CUT"], one[i].Closed, other[i].Closed}, name)
		assert.Empty(t, one[i].Errors, name)
		assert.Len(t, other[i].Layers, 14)
		for _, layer := range other[i].Layers {
			assert.Contains(t, one[i].Layers, layer)
		}
	}
}

// What another program measures is what shop.json says: the box of the demo's rib.
func TestAReaderMeasuresTheDemo(t *testing.T) {
	if exec.Command("/usr/bin/python3", "-c", "import ezdxf").Run() != nil {
		outside.Missing(t, "ezdxf (package python3-ezdxf)")
	}
	folder := packaged(t, demo)[0]
	read := readDXF(t, "/usr/bin/python3", "../../.ci/validators/dxf.py", []string{filepath.Join(folder, "rib-1.mm.dxf"), filepath.Join(folder, "skin-1-1.mm.dxf")})
	assert.InDelta(t, 4200, read[0].Size[0], 1e-3) // the span
	assert.InDelta(t, 900, read[0].Size[1], 1e-2)  // the rise and the ribs' depth
	assert.InDelta(t, 4614.165, read[1].Size[0], 1e-3)
	assert.InDelta(t, 1090, read[1].Size[1], 1e-3)
}

// shop.json satisfies its published schema, and with any of its fields renamed does
// not.
func TestShopJSONSatisfiesItsSchema(t *testing.T) {
	judge := publishedSchema(t, "shop", "")
	for _, folder := range packaged(t, demo, "../../testdata/specs/court-room.ceiling.toml") {
		text, err := os.ReadFile(filepath.Join(folder, "shop.json"))
		require.NoError(t, err)
		var document map[string]any
		require.NoError(t, json.Unmarshal(text, &document))
		require.NoError(t, judge.Validate(document))
		for key, value := range document {
			delete(document, key)
			document[key+"_"] = value
			assert.Error(t, judge.Validate(document), key)
			delete(document, key+"_")
			document[key] = value
		}
		listed := []string{"shop.json"}
		for _, name := range document["files"].([]any) {
			listed = append(listed, name.(string))
		}
		var there []string
		entries, err := os.ReadDir(folder)
		require.NoError(t, err)
		for _, e := range entries {
			there = append(there, e.Name())
		}
		assert.ElementsMatch(t, there, listed)
	}
}

// A hostile title stands in every file as text, and adds nothing to one.
func TestHostileTitlesInjectNothing(t *testing.T) {
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	spec := filepath.Join(t.TempDir(), "x.ceiling.toml")
	title := `title = "=1+1</text><script>\n  0\nLINE\n) Tj \u202e ]]>"`
	text := regexp.MustCompile(`(?m)^title\s*=.*$`).ReplaceAllLiteralString(string(src), title)
	require.NotEqual(t, string(src), text)
	require.NoError(t, os.WriteFile(spec, []byte(text), 0o644))
	folders := packaged(t, demo, spec)
	for _, name := range []string{"rib-1.mm.dxf", "stick-1.mm.dxf"} {
		assert.Equal(t, len(counted(t, filepath.Join(folders[0], name))), len(counted(t, filepath.Join(folders[1], name))))
		a, b := counted(t, filepath.Join(folders[0], name)), counted(t, filepath.Join(folders[1], name))
		a["TEXT TEXT"], b["TEXT TEXT"] = 0, 0 // a longer title takes more lines
		assert.Equal(t, a, b)
	}
	drawing, err := os.ReadFile(filepath.Join(folders[1], "rib-1.svg"))
	require.NoError(t, err)
	assert.NotContains(t, string(drawing), "<script>")
}

// What can't be written leaves the old package as it was, and nothing beside it.
func TestPackagesAreWrittenWholeOrNotAtAll(t *testing.T) {
	full := errors.New("no space left on device")
	good := outfile.Packed{Name: "rib-1.svg", Write: func(w io.Writer) error { _, err := w.Write([]byte("new")); return err }}
	for name, last := range map[string]func(press context.CancelFunc) outfile.Packed{
		"a full device": func(context.CancelFunc) outfile.Packed {
			return outfile.Packed{Name: "shop.json", Write: func(io.Writer) error { return full }}
		},
		"an interrupt": func(press context.CancelFunc) outfile.Packed {
			return outfile.Packed{Name: "shop.json", Write: func(io.Writer) error { press(); return nil }}
		},
	} {
		t.Run(name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			require.NoError(t, os.Mkdir("package", 0o755))
			require.NoError(t, os.WriteFile("package/shop.json", []byte(`{"package": "dryfit shop", "files": []}`), 0o644))
			ctx, press := context.WithCancel(context.Background())
			defer press()
			files := []outfile.Packed{good, last(press)}
			require.Error(t, outfile.WritePackage(ctx, "package", making.ShopIndex, nil, files))
			require.Error(t, outfile.WritePackage(ctx, "fresh/deep/package", making.ShopIndex, nil, files))
			assert.Equal(t, []string{"package", "package/shop.json"}, allBelow(t, "."))
			kept, err := os.ReadFile("package/shop.json")
			require.NoError(t, err)
			assert.JSONEq(t, `{"package": "dryfit shop", "files": []}`, string(kept))
		})
	}
	t.Chdir(t.TempDir())
	require.NoError(t, outfile.WritePackage(context.Background(), "fresh/deep/package", making.ShopIndex, nil, []outfile.Packed{good}))
	assert.Equal(t, []string{"fresh", "fresh/deep", "fresh/deep/package", "fresh/deep/package/rib-1.svg"}, allBelow(t, "."))
}

// An interrupted package is one that could not be written: the status says so, and the
// old one is kept.
func TestAnInterruptedPackageKeepsTheOldOne(t *testing.T) {
	src, err := os.ReadFile(demo)
	require.NoError(t, err)
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("package", 0o755))
	require.NoError(t, os.WriteFile("package/shop.json", []byte(`{"package": "dryfit shop", "files": []}`), 0o644))
	ctx, press := context.WithCancel(context.Background())
	var out, errs bytes.Buffer
	status := run(ctx, []string{"shop", "-", "--output", "package"}, console.Streams{In: interrupting{bytes.NewReader(src), press}, Out: &out, Err: &errs})
	assert.Equal(t, exit.NotChecked, status)
	assert.Equal(t, "dryfit: interrupted\n", errs.String())
	assert.Equal(t, []string{"package", "package/shop.json"}, allBelow(t, "."))
}

// allBelow are the paths of all that is in a folder, hidden or not.
func allBelow(t *testing.T, folder string) (out []string) {
	require.NoError(t, filepath.WalkDir(folder, func(path string, _ os.DirEntry, err error) error {
		if path != folder {
			out = append(out, filepath.ToSlash(path))
		}
		return err
	}))
	slices.Sort(out)
	return out
}

// Steps in the list of stations add up to where each run ends, as they are printed.
func TestStationsAddUp(t *testing.T) {
	for _, folder := range packaged(t, demo, "../../testdata/specs/music-room.ceiling.toml") {
		text, err := os.ReadFile(filepath.Join(folder, "stations.csv"))
		require.NoError(t, err)
		sums, ends := map[string]int{}, 0
		for _, line := range strings.Split(strings.TrimSpace(string(text)), "\r\n")[1:] {
			cells := strings.Split(line, ",")
			at, step := hundredths(t, cells[3]), hundredths(t, cells[4])
			run := cells[0] + cells[1]
			sums[run] += step
			assert.Equal(t, at, sums[run], line)
			if cells[2] == "right end" {
				ends++
			}
		}
		assert.Equal(t, len(sums), ends)
		assert.Greater(t, ends, 5)
	}
}

// hundredths is a number of so many decimals without its point.
func hundredths(t *testing.T, cell string) int {
	n, err := strconv.Atoi(strings.Replace(cell, ".", "", 1))
	require.NoError(t, err)
	return n
}
