package climate

// town is a town that a weather station is named for, and its county.
type town struct {
	name, state string
	fips        int
}

// String returns what [Parse] reads as the town's county: "Duluth, MN", or the county
// itself where another one has the town's name.
func (t town) String() string {
	if _, err := Find(t.name, t.state); err == nil {
		return t.name + ", " + t.state
	}
	c, _ := byNumber(t.fips)
	return c.String()
}
