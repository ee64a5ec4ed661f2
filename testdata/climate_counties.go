//go:build ignore

// Climate_counties compares the county table of package climate with an independent
// list, that of the npm package us-atlas 3.0.1 (Census Bureau outlines of 2017). It
// fetches the package with npm, so it runs only when asked:
//
//	go run testdata/climate_counties.go > testdata/climate_counties.md
//
// With -atlas FILE it reads a counties-10m.json that is already there. What it found
// last is in climate_counties.md, which a test of package climate reads.
package main

import (
	"archive/tar"
	"compress/gzip"
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/climate"
)

const pack = "us-atlas@3.0.1"

func main() {
	log.SetFlags(0)
	atlas := flag.String("atlas", "", "counties-10m.json, if it need not be fetched")
	flag.Parse()
	raw, err := read(*atlas)
	if err != nil {
		log.Fatal(err)
	}
	var file struct {
		Objects map[string]struct {
			Geometries []struct {
				ID         string
				Properties struct{ Name string }
			}
		}
	}
	if err := json.Unmarshal(raw, &file); err != nil {
		log.Fatal(err)
	}
	theirs, ours := map[string]string{}, map[string]string{}
	for _, g := range file.Objects["counties"].Geometries {
		theirs[g.ID] = g.Properties.Name
	}
	for c := range climate.All {
		ours[c.Code()] = c.Name
	}
	report(theirs, ours)
}

// read returns the file, or fetches the package and takes it from there.
func read(path string) ([]byte, error) {
	if path != "" {
		return os.ReadFile(path)
	}
	dir, err := os.MkdirTemp("", "counties")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	npm := exec.Command("npm", "pack", "--silent", pack)
	npm.Dir, npm.Stderr = dir, os.Stderr
	if err := npm.Run(); err != nil {
		return nil, fmt.Errorf("npm pack %s: %w", pack, err)
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.tgz"))
	if err != nil || len(files) != 1 {
		return nil, fmt.Errorf("npm left %q, want one archive", files)
	}
	f, err := os.Open(files[0])
	if err != nil {
		return nil, err
	}
	defer f.Close()
	plain, err := gzip.NewReader(f)
	if err != nil {
		return nil, err
	}
	for archive := tar.NewReader(plain); ; {
		entry, err := archive.Next()
		if err != nil {
			return nil, fmt.Errorf("counties-10m.json in %s: %w", pack, err)
		}
		if filepath.Base(entry.Name) == "counties-10m.json" {
			return io.ReadAll(archive)
		}
	}
}

func report(theirs, ours map[string]string) {
	fmt.Printf(`# The county table against the list of %s

Written by testdata/climate_counties.go, which fetches the list with npm.

`, pack)
	var lines, missing, extra, named []string
	states := map[string]int{}
	for id, name := range theirs {
		states[id[:2]]++
		lines = append(lines, id+" "+name+"\n")
		switch mine, ok := ours[id]; {
		case !ok:
			missing = append(missing, id+" "+name)
		case mine != name:
			named = append(named, fmt.Sprintf("%s %s for %s", id, mine, name))
		}
	}
	for id, name := range ours {
		if _, ok := theirs[id]; !ok {
			extra = append(extra, id+" "+name)
		}
	}
	list := func(what string, items []string) {
		slices.Sort(items)
		fmt.Printf("- %s: %d%s\n", what, len(items), strings.Join(append([]string{""}, items...), "; "))
	}
	fmt.Printf("- counties in the list: %d\n- counties in the table: %d\n", len(theirs), len(ours))
	list("in the list but not in the table", missing)
	list("in the table but not in the list", extra)
	list("named otherwise", named)
	slices.Sort(lines)
	fmt.Printf("- SHA-256 of the list's sorted lines \"FIPS name\": %x\n\nCounties by the first two digits of the number:\n\n| state | counties |\n|---|---|\n",
		sha256.Sum256([]byte(strings.Join(lines, ""))))
	var codes []string
	for code := range states {
		codes = append(codes, code)
	}
	slices.Sort(codes)
	for _, code := range codes {
		fmt.Printf("| %s | %d |\n", code, states[code])
	}
}
