package main

import (
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"
	"unicode"
	"unicode/utf16"

	"github.com/urfave/cli/v2"

	"github.com/coldseam/coldseam/rvalue"
)

// Exit codes.
const (
	exitDone  = 0
	exitInput = 1 // the input is wrong; the message says where and what to write
	exitUsage = 2 // the command line is wrong
)

// usageError is a mistake in the command line rather than in the input.
type usageError struct{ msg string }

func (e usageError) Error() string { return e.msg }

// run is the whole program: arguments and streams in, exit code out. This file
// is the only one that knows the command-line library.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	out := &checked{w: stdout}
	app := newApp(stdin, out, stderr)
	args, err := flagsFirst(app, args)
	if err == nil {
		err = app.Run(append([]string{app.Name}, args...))
	}
	if err == nil {
		err = out.err // a full disk must not pass for a result
	}
	if err == nil {
		return exitDone
	}
	fmt.Fprintf(stderr, "coldseam: %s\n", harmless(strings.TrimPrefix(err.Error(), "coldseam: ")))
	var usage usageError
	if errors.As(err, &usage) {
		fmt.Fprintln(stderr, "try: coldseam help")
		return exitUsage
	}
	return exitInput
}

// harmless shows as an escape, of the kind that JSON has too, what is quoted from a file
// or an argument and would command the terminal.
func harmless(s string) string {
	dangerous := func(r rune) bool { return !unicode.IsGraphic(r) && r != '\n' && r != '\t' }
	if !strings.ContainsFunc(s, dangerous) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if !dangerous(r) {
			b.WriteRune(r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, `\u%04x`, unit)
		}
	}
	return b.String()
}

// checked lets nothing through that commands a terminal, and remembers the first error of
// writing.
type checked struct {
	w   io.Writer
	err error
}

func (c *checked) Write(p []byte) (int, error) {
	if _, err := io.WriteString(c.w, harmless(string(p))); err != nil {
		if c.err == nil {
			c.err = err
		}
		return 0, err
	}
	return len(p), nil
}

// command is what a subcommand gets: its arguments and options.
type command struct {
	name   string
	args   []string
	text   func(string) string // a string option
	is     func(string) bool   // a yes-or-no option
	given  func(string) bool   // whether an option was written
	stdin  io.Reader
	stdout io.Writer
	stderr io.Writer
	units  rvalue.Units
	asked  bool // the units were asked for, so that a house file's own do not count
}

func newApp(stdin io.Reader, stdout, stderr io.Writer) *cli.App {
	usage := func(_ *cli.Context, err error, _ bool) error { return usageError{err.Error()} }
	action := func(f func(command) error) cli.ActionFunc {
		return func(c *cli.Context) error {
			var units rvalue.Units
			if name := c.String("units"); name != "" { // schema prints no quantity
				var err error
				if units, err = rvalue.ParseUnits(name); err != nil {
					return usageError{fmt.Sprintf("--units %s: use ip or si", name)}
				}
			}
			return f(command{
				name: c.Command.Name, args: c.Args().Slice(), text: c.String, is: c.Bool, given: c.IsSet,
				stdin: stdin, stdout: stdout, stderr: stderr, units: units, asked: c.IsSet("units"),
			})
		}
	}
	units := &cli.StringFlag{Name: "units", Value: "ip", Usage: "`ip` or si: the units of the output"}
	json := &cli.BoolFlag{Name: "json", Usage: "print one JSON object instead of text"}
	sources := &cli.BoolFlag{Name: "sources", Usage: "say of every figure where it comes from"}
	app := &cli.App{
		Name:        "coldseam",
		Usage:       "what building assemblies really resist, and a house's weakest link",
		Description: "Start with: coldseam rank\nLocal codes and licensed trades decide; figures rest on the defaults that the output lists.",
		Writer:      stdout, ErrWriter: io.Discard,
		Version:              version(),
		EnableBashCompletion: true,
		ExitErrHandler:       func(*cli.Context, error) {}, // run maps errors to exit codes
		OnUsageError:         usage,
		Action: func(c *cli.Context) error {
			if word := c.Args().First(); word != "" && !strings.HasPrefix(word, "--generate") {
				return usageError{fmt.Sprintf("no command %q%s", word, didYouMean(word, commandNames(c.App)))}
			}
			return cli.ShowAppHelp(c)
		},
		Commands: []*cli.Command{
			{
				Name: "rank", Usage: "rank the parts of a house by the heat they lose and name the weakest link",
				ArgsUsage: "HOUSE.toml (- for standard input; none: the built-in example)",
				Flags: []cli.Flag{
					units, json, sources,
					&cli.BoolFlag{Name: "numeric", Usage: "solve every framed assembly in its section, not steel alone"},
				},
				Action: action(rank),
			},
			{
				Name: "layers", Usage: "what one assembly resists, by each method, layer by layer",
				ArgsUsage: "'gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding'",
				Flags: []cli.Flag{
					units, json, sources,
					&cli.StringFlag{Name: "faces", Value: "wall", Usage: "`wall`, ceiling, floor, roof, roof 30° or roof 6/12"},
					&cli.StringFlag{Name: "beyond", Value: "open", Usage: "`open` air, still air (garage, attic), or soil"},
					&cli.StringFlag{Name: "films", Value: "ashrae", Usage: "`ashrae` or iso6946: the surface films, and the method that goes with them"},
					&cli.StringFlag{Name: "method", Usage: "the `METHOD` to call effective: parallel path, isothermal planes, combined, zone, numeric (default: the advised one)"},
					&cli.StringFlag{Name: "indoors", Usage: "indoor air `TEMPERATURE`, such as 68 °F or 20 °C"},
					&cli.StringFlag{Name: "outdoors", Usage: "outdoor air `TEMPERATURE`"},
					&cli.StringFlag{Name: "wind", Usage: "outdoor wind `SPEED`, such as 15 mph (default: the films' own winter wind)"},
					&cli.BoolFlag{Name: "cold", Usage: "let conductivities follow the layers' own mean temperatures"},
				},
				Action: action(layers),
			},
			{
				Name: "glass", Usage: "what a window lets through by its glass and frame, when it sweats, what better glass gains",
				ArgsUsage: "'glass 3 mm + air 12 mm + low-e 0.04 glass 3 mm' (indoors first)",
				Flags: []cli.Flag{
					units, json,
					&cli.StringFlag{Name: "size", Value: "30 in x 48 in", Usage: "width by height of the window, frame `INCLUDED`"},
					&cli.StringFlag{Name: "frame", Value: "wood", Usage: "`wood`, vinyl, clad wood, fiberglass, aluminum, aluminum with thermal break"},
					&cli.StringFlag{Name: "spacer", Value: "metal", Usage: "`metal`, warm, fused glass or insulated metal: what holds sealed panes apart"},
					&cli.BoolFlag{Name: "fixed", Usage: "the window does not open"},
					&cli.StringFlag{Name: "tilt", Usage: "from level, such as 45° (default: 90°, upright)"},
					&cli.StringFlag{Name: "indoors", Usage: "indoor air `TEMPERATURE` (default: 70 °F)"},
					&cli.StringFlag{Name: "outdoors", Usage: "outdoor air `TEMPERATURE` (default: 0 °F)"},
					&cli.StringFlag{Name: "wind", Usage: "outdoor wind `SPEED` (default: 15 mph)"},
				},
				Action: action(glass),
			},
			{
				Name: "section", Usage: "a drawn section or one of our own, or the framed assemblies of a house in theirs: heat, psi, coldest spot",
				ArgsUsage: "DRAWING.toml, HOUSE.toml (- for standard input) or a section of our own, such as 'rim joist, 2x6'",
				Flags: []cli.Flag{
					units, json,
					&cli.StringFlag{Name: "picture", Usage: "draw materials, isotherms and heat-flow lines to `FILE.svg`, of a house one for each assembly"},
				},
				Action: action(sectionOf),
			},
			{
				Name: "order", Usage: "the windows of a house: what they let through, when they sweat, what to order, and where the code wants safety glass",
				ArgsUsage: "HOUSE.toml (- for standard input; none: the built-in example)",
				Flags:     []cli.Flag{units, json},
				Action:    action(order),
			},
			{
				Name: "materials", Usage: "the catalogue of materials, with sources",
				ArgsUsage: "[WORDS]",
				Flags:     []cli.Flag{units, json},
				Action:    action(materials),
			},
			{
				Name: "zone", Usage: "a county's climate, and what the energy code and the retrofit advice ask there",
				ArgsUsage: "'COUNTY, STATE', such as 'St. Louis County, MN', or a climate zone, such as 6A",
				Flags: []cli.Flag{
					units, json, sources,
					&cli.StringFlag{Name: "edition", Usage: "only this `EDITION` of the code, such as 2021"},
					&cli.StringFlag{Name: "base", Usage: "degree days at another base `TEMPERATURE` too, such as 60 °F"},
					&cli.StringFlag{Name: "altitude", Usage: "the place's own `HEIGHT` above the sea, such as 5200 ft"},
				},
				Action: action(zone),
			},
			{
				Name: "completion", Usage: "print the completion script of a shell",
				ArgsUsage: "bash, zsh or fish",
				Action:    func(c *cli.Context) error { return completion(c.App, c.Args().Slice(), stdout) },
			},
			{
				Name: "schema", Usage: "print the JSON Schema of the house file, or of a drawn section, for editors",
				ArgsUsage: "[section]",
				Action:    action(schema),
			},
		},
	}
	for _, c := range app.Commands {
		c.OnUsageError = usage
	}
	return app
}

// version is that of the module, as the build knows it.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(devel)"
}

func commandNames(app *cli.App) []string {
	var names []string
	for _, c := range app.Commands {
		if !c.Hidden {
			names = append(names, c.Name)
		}
	}
	return names
}

// flagsFirst moves the options of a subcommand before its arguments, since the
// library reads none behind the first argument, and refuses unknown ones.
func flagsFirst(app *cli.App, args []string) ([]string, error) {
	at := 0
	for at < len(args) && strings.HasPrefix(args[at], "-") {
		at++
	}
	if at == len(args) {
		return args, nil
	}
	if topic := at + 1; args[at] == "help" && topic < len(args) && app.Command(args[topic]) == nil {
		return nil, usageError{fmt.Sprintf("no command %q%s", args[topic], didYouMean(args[topic], commandNames(app)))}
	}
	cmd := app.Command(args[at])
	if cmd == nil || args[len(args)-1] == "--generate-bash-completion" {
		return args, nil
	}
	takesValue := map[string]bool{"help": false, "h": false, "generate-bash-completion": false}
	var names []string
	for _, f := range cmd.Flags {
		_, isBool := f.(*cli.BoolFlag)
		for _, name := range f.Names() {
			takesValue[name] = !isBool
			names = append(names, "--"+name)
		}
	}
	out := append([]string(nil), args[:at+1]...)
	var rest []string
	for i := at + 1; i < len(args); i++ {
		word := args[i]
		if word == "--" {
			rest = append(rest, args[i+1:]...)
			break
		}
		if len(word) < 2 || word[0] != '-' {
			rest = append(rest, word)
			continue
		}
		name, _, inline := strings.Cut(strings.TrimLeft(word, "-"), "=")
		value, known := takesValue[name]
		switch {
		case !known:
			return nil, usageError{fmt.Sprintf("%s has no option %s%s", cmd.Name, word, didYouMean("--"+name, names))}
		case value && !inline && i+1 == len(args):
			return nil, usageError{fmt.Sprintf("option %s wants a value", word)}
		}
		out = append(out, word)
		if value && !inline {
			i++
			out = append(out, args[i])
		}
	}
	if len(rest) > 0 {
		out = append(append(out, "--"), rest...)
	}
	return out, nil
}

// didYouMean suggests the known word that shares the longest start with one
// that is not known.
func didYouMean(word string, known []string) string {
	best, length := "", 0
	for _, k := range known {
		n := 0
		for n < len(k) && n < len(word) && k[n] == word[n] {
			n++
		}
		if n > length {
			best, length = k, n
		}
	}
	if length > len(best)-len(strings.TrimLeft(best, "-")) {
		return fmt.Sprintf("; did you mean %s?", best)
	}
	if len(known) == 0 {
		return ""
	}
	return "; there are " + strings.Join(known, ", ")
}

// completion prints a script that asks the program itself for the words.
func completion(app *cli.App, args []string, w io.Writer) error {
	if len(args) != 1 {
		return usageError{"completion wants one shell: bash, zsh or fish"}
	}
	switch args[0] {
	case "bash":
		fmt.Fprint(w, `_coldseam() {
  local cur=${COMP_WORDS[COMP_CWORD]} words
  local IFS=$'\n'
  if [[ $cur == -* ]]; then
    words=$("${COMP_WORDS[@]:0:COMP_CWORD}" "$cur" --generate-bash-completion 2>/dev/null)
    COMPREPLY=($(compgen -W "$words" -- "$cur"))
    return
  fi
  words=$("${COMP_WORDS[@]:0:COMP_CWORD}" --generate-bash-completion 2>/dev/null)
  COMPREPLY=($(compgen -W "$words" -- "$cur") $(compgen -f -X '!*.toml' -- "$cur"))
}
complete -o filenames -F _coldseam coldseam
`)
	case "zsh":
		fmt.Fprint(w, `#compdef coldseam
_coldseam() {
  local -a words
  words=("${(@f)$(${words[1,CURRENT-1]} --generate-bash-completion 2>/dev/null)}")
  _describe 'words' words
  _files -g '*.toml'
}
compdef _coldseam coldseam
`)
	case "fish":
		script, err := app.ToFishCompletion()
		if err != nil {
			return err
		}
		fmt.Fprint(w, script)
	default:
		return usageError{fmt.Sprintf("no completion for %q; use bash, zsh or fish", args[0])}
	}
	return nil
}
