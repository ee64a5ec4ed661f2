package section

import (
	"math"
	"slices"
)

// front is one step of the elimination: the unknowns that leave the system
// there, those that stay beside them, and the columns of the Cholesky factor.
type front struct {
	out, stay []int32
	l         []float64 // (out+stay) rows by out columns: L11 over L21
}

// factor is a Cholesky factor by nested dissection of a grid of elements: boxes
// of elements are halved down to one, and on the way back unknowns leave as
// soon as all their elements are in the box. Its zero value is ready; used
// again, it uses its room again.
type factor struct {
	fronts  []front
	touches []int32 // by unknown: how many elements touch it
	floats  slab[float64]
	ints    slab[int32]
	pool    [][]float64
	place   []int32
}

// part is what is left of a box of elements: its unknowns in rising order, how
// many of their elements it holds, and their matrix, lower triangle by rows.
type part struct {
	dofs  []int32
	count []int32
	a     []float64
	width int       // of a row of a
	room  []float64 // what a lies in
}

// slab hands out slices that live as long as itself.
type slab[T any] struct {
	chunks [][]T
	chunk  int
	used   int
}

const slabSize = 1 << 15

func (s *slab[T]) take(n int) []T {
	for {
		if s.chunk == len(s.chunks) {
			s.chunks = append(s.chunks, make([]T, max(slabSize, n)))
		}
		if c := s.chunks[s.chunk]; s.used+n <= len(c) {
			out := c[s.used : s.used+n : s.used+n]
			s.used += n
			return out
		}
		s.chunk, s.used = s.chunk+1, 0
	}
}

func (s *slab[T]) reset() { s.chunk, s.used = 0, 0 }

// element gives the unknowns of a grid cell, rising and without repeats, and its
// matrix, lower triangle by rows; none for an empty cell.
type element func(i, j int) ([]int32, []float64)

// dissect factors the system of the elements of an nx by ny grid. It reports
// whether the matrix is positive definite.
func (f *factor) dissect(nx, ny int, touches []int32, el element) bool {
	f.fronts, f.touches = f.fronts[:0], touches
	f.floats.reset()
	f.ints.reset()
	rest, ok := f.box(0, nx, 0, ny, el)
	return ok && len(rest.dofs) == 0
}

func (f *factor) box(x0, x1, y0, y1 int, el element) (part, bool) {
	if x1-x0 == 1 && y1-y0 == 1 {
		dofs, a := el(x0, y0)
		n := len(dofs)
		if n == 0 {
			return part{}, true
		}
		ids := f.ints.take(2 * n)
		p := part{dofs: ids[:n:n], count: ids[n:], a: a, width: n}
		copy(p.dofs, dofs)
		for i := range p.count {
			p.count[i] = 1
		}
		return f.join(p, part{})
	}
	var a, b part
	var ok bool
	if x1-x0 >= y1-y0 {
		m := (x0 + x1) / 2
		if a, ok = f.box(x0, m, y0, y1, el); !ok {
			return a, false
		}
		b, ok = f.box(m, x1, y0, y1, el)
	} else {
		m := (y0 + y1) / 2
		if a, ok = f.box(x0, x1, y0, m, el); !ok {
			return a, false
		}
		b, ok = f.box(x0, x1, m, y1, el)
	}
	switch {
	case !ok:
		return b, false
	case len(a.dofs) == 0:
		return b, true
	case len(b.dofs) == 0:
		return a, true
	}
	return f.join(a, b)
}

// take returns a slice of n numbers, dirty, from the pool if it has one.
func (f *factor) take(n int) []float64 {
	for i := len(f.pool) - 1; i >= 0 && i >= len(f.pool)-8; i-- {
		if s := f.pool[i]; cap(s) >= n {
			f.pool[i] = f.pool[len(f.pool)-1]
			f.pool = f.pool[:len(f.pool)-1]
			return s[:n]
		}
	}
	return make([]float64, n+n/4)[:n]
}

func (f *factor) give(s []float64) {
	if s != nil {
		f.pool = append(f.pool, s)
	}
}

// join adds up two parts and eliminates the unknowns whose elements are all in.
func (f *factor) join(a, b part) (part, bool) {
	na, nb := len(a.dofs), len(b.dofs)
	f.place = slices.Grow(f.place[:0], na+nb)[:na+nb]
	at, bt := f.place[:na], f.place[na:]
	// First the unknowns, rising, with the sign of those that leave turned;
	// then their places: those that leave, then those that stay.
	ids := f.ints.take(2 * (na + nb))
	dofs, count := ids[:na+nb], ids[na+nb:]
	n, k := 0, 0
	for i, j := 0, 0; i < na || j < nb; n++ {
		var c int32
		switch {
		case j == nb || i < na && a.dofs[i] < b.dofs[j]:
			dofs[n], c = a.dofs[i], a.count[i]
			at[i] = int32(n)
			i++
		case i == na || b.dofs[j] < a.dofs[i]:
			dofs[n], c = b.dofs[j], b.count[j]
			bt[j] = int32(n)
			j++
		default:
			dofs[n], c = a.dofs[i], a.count[i]+b.count[j]
			at[i], bt[j] = int32(n), int32(n)
			i, j = i+1, j+1
		}
		if count[n] = c; c == f.touches[dofs[n]] {
			count[n] = 0
			k++
		}
	}
	order := f.ints.take(2*n - k)
	fr := front{out: order[:k:k], stay: order[k:n:n]}
	rest := part{dofs: fr.stay, count: order[n:]}
	slot := f.ints.take(n)
	for q, o, s := 0, 0, 0; q < n; q++ {
		if count[q] == 0 {
			fr.out[o], slot[q] = dofs[q], int32(o)
			o++
		} else {
			fr.stay[s], rest.count[s], slot[q] = dofs[q], count[q], int32(k+s)
			s++
		}
	}
	for i := range f.place {
		f.place[i] = slot[f.place[i]]
	}
	room := f.take(n * n)
	clear(room)
	scatter(room, n, a, at)
	scatter(room, n, b, bt)
	f.give(a.room)
	f.give(b.room)
	rest.a, rest.width, rest.room = room, n, room
	if k == 0 {
		return rest, true
	}
	fr.l = f.floats.take(n * k)
	for i := range n {
		copy(fr.l[i*k:], room[i*n:i*n+min(i+1, k)])
	}
	if !cholesky(fr.l, n, k) {
		return rest, false
	}
	f.fronts = append(f.fronts, fr)
	if n == k {
		f.give(room)
		return part{}, true
	}
	rest.a = room[k*n+k:]
	downdate(rest.a, n, n-k, fr.l[k*k:], k)
	return rest, true
}

// scatter adds a part's matrix into a larger one.
func scatter(big []float64, n int, p part, place []int32) {
	for i, r := range place {
		row := big[int(r)*n:]
		for j, v := range p.a[i*p.width : i*p.width+i+1] {
			if c := place[j]; c <= r {
				row[c] += v
			} else {
				big[int(c)*n+int(r)] += v
			}
		}
	}
}

// cholesky factors the upper k by k block of a panel of n rows and solves the
// rows below for it, block by block.
func cholesky(l []float64, n, k int) bool {
	const block = 24
	for b := 0; b < k; b += block {
		e := min(b+block, k)
		// What the blocks before leave of columns b to e.
		if b > 0 {
			for i := b; i < n; i++ {
				subtractDots(l[i*k+b:i*k+min(e, i+1)], l[i*k:i*k+b], l[b*k:], k)
			}
		}
		for i := b; i < n; i++ {
			row := l[i*k : i*k+min(e, i+1)]
			for j := b; j < min(e, i); j++ {
				s := row[j]
				pivot := l[j*k : j*k+j+1]
				for t := b; t < j; t++ {
					s -= row[t] * pivot[t]
				}
				row[j] = s / pivot[j]
			}
			if i >= e {
				continue
			}
			s := row[i]
			for t := b; t < i; t++ {
				s -= row[t] * row[t]
			}
			if !(s > 0) || math.IsInf(s, 1) {
				return false
			}
			row[i] = math.Sqrt(s)
		}
	}
	return true
}

// subtractDots subtracts from out[j] the product of row with the j-th row of m.
func subtractDots(out, row, m []float64, stride int) {
	n := len(row)
	j := 0
	for ; j+4 <= len(out); j += 4 {
		a, b := m[j*stride:][:n], m[(j+1)*stride:][:n]
		c, d := m[(j+2)*stride:][:n], m[(j+3)*stride:][:n]
		var s, t, u, v float64
		for i, r := range row {
			s += r * a[i]
			t += r * b[i]
			u += r * c[i]
			v += r * d[i]
		}
		out[j] -= s
		out[j+1] -= t
		out[j+2] -= u
		out[j+3] -= v
	}
	for ; j < len(out); j++ {
		a := m[j*stride:][:n]
		s := 0.0
		for i, r := range row {
			s += r * a[i]
		}
		out[j] -= s
	}
}

// downdate subtracts l lᵀ from the lower triangle of the first m rows of a, a
// row being width long; l is m rows by k.
func downdate(a []float64, width, m int, l []float64, k int) {
	i := 0
	for ; i+2 <= m; i += 2 {
		r0, r1 := l[i*k:][:k], l[(i+1)*k:][:k]
		o0, o1 := a[i*width:][:i+2], a[(i+1)*width:][:i+2]
		j := 0
		for ; j+4 <= i+2; j += 4 {
			a0, a1 := l[j*k:][:k], l[(j+1)*k:][:k]
			a2, a3 := l[(j+2)*k:][:k], l[(j+3)*k:][:k]
			var s0, s1, s2, s3, t0, t1, t2, t3 float64
			for t, x := range r0 {
				y := r1[t]
				b := a0[t]
				s0 += x * b
				t0 += y * b
				b = a1[t]
				s1 += x * b
				t1 += y * b
				b = a2[t]
				s2 += x * b
				t2 += y * b
				b = a3[t]
				s3 += x * b
				t3 += y * b
			}
			o0[j] -= s0
			o0[j+1] -= s1
			o0[j+2] -= s2
			o0[j+3] -= s3
			o1[j] -= t0
			o1[j+1] -= t1
			o1[j+2] -= t2
			o1[j+3] -= t3
		}
		for ; j < i+2; j++ {
			b := l[j*k:][:k]
			var s, t float64
			for q, x := range r0 {
				s += x * b[q]
				t += r1[q] * b[q]
			}
			o0[j] -= s
			o1[j] -= t
		}
	}
	if i < m {
		subtractDots(a[i*width:i*width+i+1], l[i*k:][:k], l, k)
	}
}

// solve replaces b, one value an unknown, by the solution.
func (f *factor) solve(b []float64) {
	for n := range f.fronts {
		fr := &f.fronts[n]
		k := len(fr.out)
		for i, d := range fr.out {
			row := fr.l[i*k : i*k+i+1]
			s := b[d]
			for j, v := range row[:i] {
				s -= v * b[fr.out[j]]
			}
			b[d] = s / row[i]
		}
		for i, d := range fr.stay {
			row := fr.l[(k+i)*k:][:k]
			s := 0.0
			for j, v := range row {
				s += v * b[fr.out[j]]
			}
			b[d] -= s
		}
	}
	for n := len(f.fronts) - 1; n >= 0; n-- {
		fr := &f.fronts[n]
		k := len(fr.out)
		for i, d := range fr.stay {
			x := b[d]
			for j, v := range fr.l[(k+i)*k:][:k] {
				b[fr.out[j]] -= v * x
			}
		}
		for i := k - 1; i >= 0; i-- {
			row := fr.l[i*k : i*k+i+1]
			x := b[fr.out[i]] / row[i]
			b[fr.out[i]] = x
			for j, v := range row[:i] {
				b[fr.out[j]] -= v * x
			}
		}
	}
}
