package section

// Check returns the error with which Solve would refuse the section itself,
// before any work: pieces that overlap or leave gaps, boundaries off the
// surface, figures that cannot be. It is nil if Solve would go to work.
func (s Section) Check() error {
	_, err := newPlan(&s)
	return err
}
