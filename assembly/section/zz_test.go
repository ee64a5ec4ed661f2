package section_test

import (
	"fmt"
	"github.com/coldseam/coldseam/assembly/section"
	"testing"
	"time"
)

func TestZZ(t *testing.T) {
	for n, s := range []section.Solid{balcony(), ironBar()} {
		pts := [][]section.Place{{spot(1.2, .2, 1), spot(.2, 1.2, 1), spot(1.2, .2, 1.2), spot(.2, 1.2, 1.2)}, {spot(.5, .5, 0)}}[n]
		t0 := time.Now()
		r, err := s.Solve(section.SolidOptions{Points: pts, Tolerance: 1e-4, Unknowns: 300000, Watch: func(p section.Progress) bool { fmt.Println(p, time.Since(t0)); return true }})
		if err != nil {
			t.Fatal(err)
		}
		fmt.Println(r.Heat, r.Low, r.High, r.Airs, r.Between, r.Balance, r.Moved, r.Unknowns, r.Iterations, r.Solves, r.Remarks, time.Since(t0))
		for _, x := range r.Rooms {
			fmt.Println(x)
		}
		for _, x := range r.Points {
			fmt.Println(x, x.Temperature.Celsius())
		}
	}
}
