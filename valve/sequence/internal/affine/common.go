package affine

// Common is a region that holds both: of the conditions of either those that hold
// in the other, too. It is just the two of them where one holds the other, or where
// they were parted by one condition; else it is Wide.
func (r *Region) Common(o *Region) *Region {
	c := &Region{n: r.n, enclosed: r.enclosed || o.enclosed}
	mine := c.keep(r, o)
	if len(mine) == 0 {
		return r
	}
	its := c.keep(o, r)
	if len(its) == 0 {
		return o
	}
	c.wide = r.wide || o.wide || len(mine) > 1 || len(its) > 1 || !r.parted(mine[0], o, its[0])
	c.points = append(c.points, r.points...)
	for _, p := range o.points {
		if len(c.points) >= 2*samples {
			break
		}
		c.points = append(c.points, p)
	}
	return c
}

// keep adds the rows of a that hold in b. What comes back are the numbers of the
// others.
func (c *Region) keep(a, b *Region) (others []int) {
	for n, x := range a.rows {
		if !b.implies(x) {
			others = append(others, n)
			continue
		}
		known := false
		for _, y := range c.rows {
			known = known || x.Same(y, 0)
		}
		if !known {
			c.rows = append(c.rows, x)
			c.radii = append(c.radii, a.radii[n])
		}
	}
	return others
}

// implies tells whether a row holds in all of the region: most often one of its own
// says so, or a point says that it doesn't.
func (r *Region) implies(row Form) bool {
	for _, x := range r.rows {
		if x.Same(row, 0) {
			return true
		}
	}
	for _, p := range r.points {
		if row.At(p) < -slack {
			return false
		}
	}
	bound, _ := r.Least(row)
	return bound >= -slack
}

// parted tells whether one of two rows holds wherever the other doesn't: the two
// sides of one condition.
func (r *Region) parted(mine int, o *Region, its int) bool {
	x, y, radius := r.rows[mine], o.rows[its], r.radii[mine]
	return radius == o.radii[its] && x.Plus(y).Same(Const(2*radius), slack)
}
