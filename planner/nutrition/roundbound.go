package nutrition

// lowerBound returns rounds that no plan without a late feed can do without. It
// drops the shortest intervals, lets any round feed any pot, and asks only that
// nobody waits past a deadline: then it is best to hold every round as late as the
// earliest deadline allows, and counting those is exact. Counted for each product
// alone a pot must meet it once in every turn; the products' counts add up, since a
// round holds one product.
func (s *season) lowerBound() int {
	anyProduct := s.stabs(1, func(g *group) int { return max(0, g.start) })
	if s.rules.Products == 1 {
		return anyProduct
	}
	each := 0
	for product := range s.rules.Products {
		each += s.stabs(s.rules.Products, func(g *group) int {
			turns := s.rules.Products // a free turn may come to the product last
			if g.lastProduct != AnyProduct {
				turns = (product-g.lastProduct-1+s.rules.Products)%s.rules.Products + 1
			}
			x := max(0, g.start)
			for range turns - 1 {
				x = s.nextDeadline(g, x)
			}
			return x
		})
	}
	return max(anyProduct, each)
}

func (s *season) nextDeadline(g *group, x int) int {
	if x >= len(g.days) {
		return never
	}
	return g.dueAfter(x)
}

// stabs counts the rounds that meet, for every group, the first deadline and then
// one deadline in so many feeds.
func (s *season) stabs(turns int, first func(*group) int) int {
	due := make([]int, len(s.groups))
	for i, g := range s.groups {
		due[i] = first(g)
	}
	for count := 0; ; count++ {
		earliest := never
		for _, x := range due {
			earliest = min(earliest, x)
		}
		if earliest >= len(s.allowed) {
			return count
		}
		for i, g := range s.groups {
			x := earliest
			for range turns {
				x = s.nextDeadline(g, x)
			}
			due[i] = max(due[i], x)
		}
	}
}
