package usage

import "github.com/spf13/pflag"

// OutputFlag adds --output: the file that is written in place of standard output.
func OutputFlag(flags *pflag.FlagSet, file *string) {
	flags.StringVar(file, "output", "", "write to a `file` instead of standard output")
}

// DateFlag adds --on, which [JudgedOn] reads.
func DateFlag(flags *pflag.FlagSet, on *string) {
	flags.StringVar(on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
}

// StrictFlag adds --strict.
func StrictFlag(flags *pflag.FlagSet, strict *bool) {
	flags.BoolVar(strict, "strict", false, "a query fails the spec")
}

// StandardsFlag adds --standards: files in place of those that are found.
func StandardsFlag(flags *pflag.FlagSet, files *[]string) {
	flags.StringArrayVar(files, "standards", nil, "a standards `file` in place of those found")
}
