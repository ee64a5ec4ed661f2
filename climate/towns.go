package climate

// town is a town that a weather station is named for, and its county.
type town struct {
	name, state string
	fips        int
}
