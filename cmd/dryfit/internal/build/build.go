// Package build says what the program was built from.
package build

import "runtime/debug"

// release and built are set when a release is built: its version, and the
// commit that it is built from.
var release, built string

// Version is that of the release, or of the module that was built.
func Version() string {
	if release != "" {
		return release
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(devel)"
}

// Commit is what the program was built from, as far as it knows: a release's
// own, or the one that go build recorded.
func Commit() string {
	info, ok := debug.ReadBuildInfo()
	if built != "" || !ok {
		return built
	}
	return recorded(info.Settings)
}

func recorded(settings []debug.BuildSetting) string {
	revision, modified := "", ""
	for _, s := range settings {
		switch {
		case s.Key == "vcs.revision":
			revision = s.Value
		case s.Key == "vcs.modified" && s.Value == "true":
			modified = " with changes"
		}
	}
	if revision == "" {
		return ""
	}
	return revision + modified
}

// Said is what --version adds of a commit.
func Said(commit string) string {
	if commit == "" {
		return ""
	}
	return ", commit " + commit
}
