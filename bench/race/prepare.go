package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
)

// programs are the two that race.
type programs struct{ peer, ours string }

// build compiles the reference and our solver into out/bin.
func build(out string) (programs, error) {
	bin := filepath.Join(out, "bin")
	if err := os.MkdirAll(bin, 0o755); err != nil {
		return programs{}, err
	}
	p := programs{peer: filepath.Join(bin, "direct"), ours: filepath.Join(bin, "ours")}
	err := command("g++", "-O3", "-march=native", "-std=c++17", "-I/usr/include/eigen3", "-I/usr/include/suitesparse",
		"-o", p.peer, filepath.Join("bench", "peers", "direct", "direct.cpp"), "-lcholmod", "-lopenblas")
	if err != nil {
		return p, fmt.Errorf("building the reference: %w", err)
	}
	if err := command("go", "build", "-o", p.ours, "./bench/ours"); err != nil {
		return p, fmt.Errorf("building bench/ours: %w", err)
	}
	return p, nil
}

// networks makes the folders that are missing, seeded, so that every machine races on the same ones.
func networks(o options) error {
	python := o.python
	for _, n := range o.nets {
		dir := folder(o, n)
		if _, err := os.Stat(filepath.Join(dir, "readings.csv")); err == nil {
			continue
		}
		if python == "" {
			found, err := numpyPython()
			if err != nil {
				return err
			}
			python = found
		}
		if err := command(python, filepath.Join("bench", "peers", "gen", "gen_plan.py"), strconv.Itoa(n), dir); err != nil {
			return fmt.Errorf("making network %s: %w", name(n), err)
		}
	}
	return nil
}

// numpyPython is the first interpreter on the path that can import numpy: another python3 may
// stand before Debian's, which has the modules that apt installs.
func numpyPython() (string, error) {
	for _, dir := range filepath.SplitList(os.Getenv("PATH")) {
		p := filepath.Join(dir, "python3")
		if exec.Command(p, "-c", "import numpy").Run() == nil {
			return p, nil
		}
	}
	return "", fmt.Errorf("no python3 on the path can import numpy")
}

func name(n int) string { return "A" + strconv.Itoa(n) }

func folder(o options, n int) string { return filepath.Join(o.out, "nets", name(n)) }

func command(name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = os.Stderr, os.Stderr
	return c.Run()
}
