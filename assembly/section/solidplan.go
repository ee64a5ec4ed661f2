package section

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// solidPlan is a checked solid: the grid of all its faces, what fills each cell,
// and which room each empty cell belongs to. One layer of cells is added all
// around the material, for the rooms beyond it.
type solidPlan struct {
	solid *Solid
	lines [3][]float64 // faces along each axis, rising, the added layer included
	cell  []int        // x first: the box, or empty − room, or empty alone
	names []string     // of the rooms
	rooms []Room       // one box of each, for its air and film
	airs  []float64    // different air temperatures in K, warmest first
	air   []int        // by room: index in airs
}

// nowhere is an empty cell without a room; inRoom(r) one of room r.
const nowhere = -1

func inRoom(r int) int { return -2 - r }

func (p *solidPlan) size(axis int) int { return len(p.lines[axis]) - 1 }

func (p *solidPlan) at(c [3]int) int {
	return p.cell[(c[2]*p.size(1)+c[1])*p.size(0)+c[0]]
}

func newSolidPlan(s *Solid) (*solidPlan, error) {
	p := &solidPlan{solid: s}
	if err := p.checkBoxes(); err != nil {
		return nil, err
	}
	if err := p.checkRooms(); err != nil {
		return nil, err
	}
	if err := p.fill(); err != nil {
		return nil, err
	}
	if err := p.occupy(); err != nil {
		return nil, err
	}
	if err := p.surface(); err != nil {
		return nil, err
	}
	if err := p.jumps(); err != nil {
		return nil, err
	}
	return p, p.joined()
}

func (p Place) finite() bool {
	return math.Abs(float64(p.X)) <= largest && math.Abs(float64(p.Y)) <= largest && math.Abs(float64(p.Z)) <= largest
}

func (p *solidPlan) checkBoxes() error {
	boxes := p.solid.Boxes
	if len(boxes) == 0 {
		return errors.New("section: no boxes, at least one is needed")
	}
	least, most := 0, 0
	for n, b := range boxes {
		if !b.From.finite() || !b.To.finite() {
			return fmt.Errorf("%s reaches from %v to %v, coordinates must be numbers within %g m", label("box", n, b.Name), b.From, b.To, largest)
		}
		for axis := range 3 {
			if math.Abs(b.To.coordinate(axis)-b.From.coordinate(axis)) <= snap {
				return fmt.Errorf("%s reaches from %v to %v, all sides must be longer than %g m", label("box", n, b.Name), b.From, b.To, snap)
			}
		}
		if k := float64(b.Conductivity); !(k > 0) || math.IsInf(k, 0) {
			return fmt.Errorf("%s conducts %v W/(m·K), the conductivity must be positive and finite", label("box", n, b.Name), k)
		}
		if b.Conductivity < boxes[least].Conductivity {
			least = n
		}
		if b.Conductivity > boxes[most].Conductivity {
			most = n
		}
	}
	if low, high := float64(boxes[least].Conductivity), float64(boxes[most].Conductivity); high/low > mostContrast {
		return fmt.Errorf("%s conducts %.4g W/(m·K) and %s only %.4g, more than %g times less; rounding would decide the result",
			label("box", most, boxes[most].Name), high, label("box", least, boxes[least].Name)[len("section: "):], low, mostContrast)
	}
	return nil
}

func (p *solidPlan) checkRooms() error {
	for n, r := range p.solid.Rooms {
		if !r.From.finite() || !r.To.finite() {
			return fmt.Errorf("%s reaches from %v to %v, coordinates must be numbers within %g m", label("room", n, r.Name), r.From, r.To, largest)
		}
		for axis := range 3 {
			if math.Abs(r.To.coordinate(axis)-r.From.coordinate(axis)) <= snap {
				return fmt.Errorf("%s reaches from %v to %v, all sides must be longer than %g m", label("room", n, r.Name), r.From, r.To, snap)
			}
		}
		if t := float64(r.Air); !(t > 0) || math.IsInf(t, 0) {
			return fmt.Errorf("%s is at %v K, give a temperature above absolute zero", label("room", n, r.Name), t)
		}
		if f := float64(r.Film); !(f >= 0) || math.IsInf(f, 0) {
			return fmt.Errorf("%s has a film of %v m²·K/W, it must be 0 or more", label("room", n, r.Name), f)
		}
		if i := slices.Index(p.names, r.Name); i >= 0 {
			if p.rooms[i].Air != r.Air || p.rooms[i].Film != r.Film {
				return fmt.Errorf("%s has another air or film than the box before of that name", label("room", n, r.Name))
			}
			continue
		}
		p.names, p.rooms = append(p.names, r.Name), append(p.rooms, r)
		if !slices.Contains(p.airs, float64(r.Air)) {
			p.airs = append(p.airs, float64(r.Air))
		}
	}
	switch len(p.airs) {
	case 0:
		return errors.New("section: no heat passes anywhere, there are no rooms; give at least two of different temperatures")
	case 1:
		return fmt.Errorf("section: all air is at %v, nothing would flow; give rooms of two temperatures at least", rvalue.Temperature(p.airs[0]))
	}
	slices.Sort(p.airs)
	slices.Reverse(p.airs)
	for _, r := range p.rooms {
		p.air = append(p.air, slices.Index(p.airs, float64(r.Air)))
	}
	return nil
}

// fill lays the boxes out on the grid of all faces.
func (p *solidPlan) fill() error {
	s := p.solid
	cells := 1
	for axis := range 3 {
		var v []float64
		for _, b := range s.Boxes {
			v = append(v, b.From.coordinate(axis), b.To.coordinate(axis))
		}
		low, high := slices.Min(v), slices.Max(v)
		for _, r := range s.Rooms {
			for _, x := range [2]float64{r.From.coordinate(axis), r.To.coordinate(axis)} {
				if x > low && x < high {
					v = append(v, x)
				}
			}
		}
		inner := lines(v)
		around := high - low
		p.lines[axis] = append(append([]float64{low - around}, inner...), high+around)
		cells *= p.size(axis)
	}
	if cells > mostCells {
		return fmt.Errorf("section: the faces of %d boxes and %d room boxes cut the solid into %d blocks, at most %d; draw it more simply", len(s.Boxes), len(s.Rooms), cells, mostCells)
	}
	p.cell = make([]int, cells)
	for i := range p.cell {
		p.cell[i] = nowhere
	}
	for n, b := range s.Boxes {
		err := p.within(b.From, b.To, func(c [3]int, i int) error {
			if q := p.cell[i]; q >= 0 {
				return fmt.Errorf("%s overlaps %s at %v; cut one of them back", label("box", n, b.Name), label("box", q, s.Boxes[q].Name)[len("section: "):], p.middle(c))
			}
			p.cell[i] = n
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// within calls f with every cell between two corners.
func (p *solidPlan) within(from, to Place, f func(c [3]int, i int) error) error {
	var lo, hi [3]int
	for axis := range 3 {
		a, b := from.coordinate(axis), to.coordinate(axis)
		lo[axis], hi[axis] = p.from(axis, min(a, b)), p.from(axis, max(a, b))
	}
	for k := lo[2]; k < hi[2]; k++ {
		for j := lo[1]; j < hi[1]; j++ {
			for i := lo[0]; i < hi[0]; i++ {
				if err := f([3]int{i, j, k}, (k*p.size(1)+j)*p.size(0)+i); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// from returns the line at v; what lies beyond the material, room boxes do, is
// taken to the end of the added layer.
func (p *solidPlan) from(axis int, v float64) int {
	l := p.lines[axis]
	last := len(l) - 1
	switch {
	case v < l[1]-snap:
		return 0
	case v > l[last-1]+snap:
		return last
	}
	return max(1, line(l[:last], v))
}

func (p *solidPlan) middle(c [3]int) Place {
	m := func(axis int) rvalue.Length {
		return rvalue.Length((p.lines[axis][c[axis]] + p.lines[axis][c[axis]+1]) / 2)
	}
	return Place{m(0), m(1), m(2)}
}

// occupy gives empty cells to the rooms.
func (p *solidPlan) occupy() error {
	for n, r := range p.solid.Rooms {
		id := slices.Index(p.names, r.Name)
		err := p.within(r.From, r.To, func(c [3]int, i int) error {
			switch q := p.cell[i]; {
			case q == nowhere:
				p.cell[i] = inRoom(id)
			case q < nowhere && q != inRoom(id):
				return fmt.Errorf("%s overlaps room %q at %v; cut one of them back", label("room", n, r.Name), p.names[-2-q], p.middle(c))
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// eachFace calls f with every face between a cell of material and another.
func (p *solidPlan) eachFace(f func(c, other [3]int, axis int) error) error {
	for k := range p.size(2) {
		for j := range p.size(1) {
			for i := range p.size(0) {
				c := [3]int{i, j, k}
				if p.at(c) < 0 {
					continue
				}
				for axis := range 3 {
					for _, d := range [2]int{-1, 1} {
						o := c
						o[axis] += d
						if err := f(c, o, axis); err != nil {
							return err
						}
					}
				}
			}
		}
	}
	return nil
}

// surface refuses rooms that touch no material, and surfaces inside the block
// around the solid that no room reaches.
func (p *solidPlan) surface() error {
	touched := make([]bool, len(p.rooms))
	err := p.eachFace(func(_, o [3]int, axis int) error {
		switch q := p.at(o); {
		case q < nowhere:
			touched[-2-q] = true
		case q == nowhere && o[axis] > 0 && o[axis] < p.size(axis)-1:
			return fmt.Errorf("section: nothing is drawn at %v, beside material that no room reaches there; draw the missing box, or the room", p.middle(o))
		}
		return nil
	})
	if err != nil {
		return err
	}
	for n, ok := range touched {
		if !ok {
			return fmt.Errorf("section: room %q touches no material; nothing reaches it", p.names[n])
		}
	}
	return nil
}

// jumps refuses surfaces held at two temperatures that touch.
func (p *solidPlan) jumps() error {
	held := map[[3]int]int{} // by vertex: the air it is held at
	return p.eachFace(func(c, o [3]int, axis int) error {
		q := p.at(o)
		if q >= nowhere || p.rooms[-2-q].Film > 0 {
			return nil
		}
		air := p.air[-2-q]
		at := c
		at[axis] = max(c[axis], o[axis])
		for n := range 4 {
			v := at
			v[(axis+1)%3] += n & 1
			v[(axis+2)%3] += n >> 1
			if before, ok := held[v]; ok && before != air {
				place := Place{rvalue.Length(p.lines[0][v[0]]), rvalue.Length(p.lines[1][v[1]]), rvalue.Length(p.lines[2][v[2]])}
				return fmt.Errorf("section: surfaces held at different temperatures touch at %v; no bound holds the heat between them, give the surfaces a film", place)
			}
			held[v] = air
		}
		return nil
	})
}

// joined refuses a solid in several parts.
func (p *solidPlan) joined() error {
	seen := make([]bool, len(p.cell))
	index := func(c [3]int) int { return (c[2]*p.size(1)+c[1])*p.size(0) + c[0] }
	first := -1
	return p.eachFace(func(c, _ [3]int, _ int) error {
		if seen[index(c)] {
			return nil
		}
		boxes := p.solid.Boxes
		if first >= 0 {
			n := p.at(c)
			return fmt.Errorf("section: %s and %s are not joined by any material; draw what is between them or solve them apart", label("box", first, boxes[first].Name)[len("section: "):], label("box", n, boxes[n].Name)[len("section: "):])
		}
		first = p.at(c)
		todo := [][3]int{c}
		seen[index(c)] = true
		for len(todo) > 0 {
			t := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			for axis := range 3 {
				for _, d := range [2]int{-1, 1} {
					o := t
					o[axis] += d
					if p.at(o) >= 0 && !seen[index(o)] {
						seen[index(o)] = true
						todo = append(todo, o)
					}
				}
			}
		}
		return nil
	})
}
