package rotation

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// glpsol returns the path of the GNU Linear Programming Kit's solver. Where it is
// not installed the test is skipped, except in continuous integration.
func glpsol(t testing.TB) string {
	t.Helper()
	path, err := exec.LookPath("glpsol")
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("glpsol is not installed (Debian: glpk-utils)")
		}
		t.Skip("glpsol is not installed (Debian: glpk-utils); the comparison with it is left out")
	}
	return path
}

// modelData writes a problem as data of the model in testdata/sequence.mod.
func modelData(p *problem) string {
	var b strings.Builder
	flag := func(x bool) int {
		if x {
			return 1
		}
		return 0
	}
	list := func(name string, n int, at func(i int) string) {
		fmt.Fprintf(&b, "param %s :=", name)
		for i := range n {
			fmt.Fprintf(&b, " %s", at(i))
		}
		fmt.Fprintln(&b, ";")
	}
	pair := func(i int, x any) string { return fmt.Sprintf("[%d] %v", i, x) }
	fmt.Fprintf(&b, "data;\nparam days := %d; param options := %d; param groups := %d; param years := %d;\n",
		p.days, len(p.options), len(p.stays), len(p.most))
	fmt.Fprintf(&b, "param min_stand := %d; param done := %d; param fixed := %.17g; param replace := %.17g;\n",
		p.minStand, p.done, p.fixed, p.replace)
	list("open", p.days, func(i int) string { return pair(i, flag(p.open[i])) })
	list("standing", p.days, func(i int) string { return pair(i, p.standing[i+1]-p.standing[i]) })
	list("bare", p.days, func(i int) string { return pair(i, p.bare[i+1]-p.bare[i]) })
	list("charged", p.days, func(i int) string { return pair(i, p.charged[i]) })
	list("year", p.days, func(i int) string { return pair(i, p.block[i]) })
	list("most", len(p.most), func(i int) string { return pair(i, p.most[i]) })
	list("least", len(p.least), func(i int) string { return pair(i, p.least[i]) })
	list("cost", len(p.options), func(i int) string { return pair(i+1, p.options[i].cost) })
	list("stays", len(p.stays), func(i int) string { return pair(i+1, p.stays[i]) })
	list("standing_stays", len(p.stays), func(i int) string { return pair(i+1, p.standingStays[i]) })
	list("release", len(p.stays), func(i int) string { return pair(i+1, p.release[i]) })
	list("standing_host", len(p.stays), func(i int) string { return pair(i+1, flag(slices.Contains(p.standingGroups, i))) })
	refuses := func(o, start, day int) bool {
		return slices.ContainsFunc(p.pins, func(pin checkpoint) bool {
			return day >= pin.from && day <= pin.to && !pin.holds(o, start)
		})
	}
	list("bare_refused", p.days, func(i int) string { return pair(i, flag(refuses(bareOption, 0, i))) })
	list("standing_refused", p.days, func(i int) string { return pair(i, flag(refuses(standingOption, 0, i))) })
	space := make([]float64, p.days+1)
	var host, allowed, value, refused strings.Builder
	for o := range p.options {
		for g := range p.stays {
			fmt.Fprintf(&host, " [%d,%d] %d", o+1, g+1, flag(slices.Contains(p.options[o].groups, g)))
		}
		for s := range p.days {
			fmt.Fprintf(&allowed, " [%d,%d] %d", o+1, s, flag(p.options[o].allowed.has(s)))
			row := p.row(o, s, space[:p.days-s+1])
			for day := s; day < p.days; day++ {
				fmt.Fprintf(&value, " [%d,%d,%d] %.17g", o+1, s, day, row[day-s+1]-row[day-s])
				fmt.Fprintf(&refused, " [%d,%d,%d] %d", o+1, s, day, flag(refuses(o, s, day)))
			}
		}
	}
	for _, param := range []struct {
		name   string
		values *strings.Builder
	}{{"host", &host}, {"allowed", &allowed}, {"value", &value}, {"refused", &refused}} {
		fmt.Fprintf(&b, "param %s :=%s;\n", param.name, param.values)
	}
	b.WriteString("end;\n")
	return b.String()
}

var bestLine = regexp.MustCompile(`(?m)^best (\S+)$`)

// solveByGLPK returns the best total that the general solver finds, or minus
// infinity where it finds none.
func solveByGLPK(t testing.TB, solver string, p *problem) float64 {
	t.Helper()
	data := filepath.Join(t.TempDir(), "case.dat")
	if err := os.WriteFile(data, []byte(modelData(p)), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(solver, "--math", "testdata/sequence.mod", "--data", data).CombinedOutput()
	text := string(out)
	switch {
	case err != nil:
		t.Fatalf("glpsol: %v\n%s", err, text)
	case strings.Contains(text, "HAS NO PRIMAL FEASIBLE SOLUTION"), strings.Contains(text, "HAS NO INTEGER FEASIBLE SOLUTION"),
		strings.Contains(text, "NO FEASIBLE SOLUTION"):
		return math.Inf(-1)
	case !strings.Contains(text, "INTEGER OPTIMAL SOLUTION FOUND"):
		t.Fatalf("glpsol ends without a proof:\n%s", text)
	}
	best, err := strconv.ParseFloat(bestLine.FindStringSubmatch(text)[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return best
}

// randomProblem draws a case with even odds, in which many rules bind at once.
func randomProblem(r *rand.Rand) *problem {
	const days, options, groups = 14, 4, 2
	prefix := func(n int, low, high float64) []float64 {
		row := make([]float64, n+1)
		for i := range n {
			row[i+1] = row[i] + low + (high-low)*r.Float64()
		}
		return row
	}
	host := func() (list []int) {
		for g := range groups {
			if r.IntN(2) == 0 {
				list = append(list, g)
			}
		}
		return list
	}
	p := &problem{
		days: days, minStand: 1 + r.IntN(3), done: r.IntN(2),
		standing: prefix(days, -0.5, 0.3), bare: prefix(days, -0.5, 0), standingGroups: host(),
		most: []int{1 + r.IntN(3), r.IntN(3)}, least: []int{0, r.IntN(2)},
		fixed: 0.3 * r.Float64(), replace: 0.6 * r.Float64(),
	}
	p.least[1] = min(p.least[1], p.most[1])
	for i := range days {
		p.open = append(p.open, r.IntN(4) > 0)
		p.block = append(p.block, 2*i/days)
		p.charged = append(p.charged, min(1, float64(days-i)/5))
	}
	for range groups {
		p.stays, p.standingStays = append(p.stays, r.IntN(7)), append(p.standingStays, r.IntN(10))
		p.release = append(p.release, r.IntN(12)-6)
	}
	scores := make([][][]float64, options)
	for o := range options {
		opt := option{allowed: newDayset(days), cost: 0.5 * r.Float64(), groups: host()}
		for s := range days {
			if r.IntN(3) > 0 {
				opt.allowed.set(s)
			}
			scores[o] = append(scores[o], prefix(days-s, -0.3, 1))
		}
		p.options = append(p.options, opt)
	}
	p.row = func(o, start int, space []float64) []float64 { return scores[o][start][:len(space)] }
	if r.IntN(3) == 0 {
		day, wanted := r.IntN(days), r.IntN(options)
		p.pins = append(p.pins, checkpoint{from: day, to: day, holds: func(o, _ int) bool { return o == wanted }})
	}
	return p
}

// The general solver and the planner find the same best total on random cases.
func TestSolveEqualsGLPK(t *testing.T) {
	solver := glpsol(t)
	r := rand.New(rand.NewPCG(2027, 2))
	const cases = 40
	bound, none := 0, 0
	for i := range cases {
		p := randomProblem(r)
		_, score, ok := newSolver(p, 0).solve()
		if !ok {
			none++
			score = math.Inf(-1)
		}
		want := solveByGLPK(t, solver, p)
		if math.Abs(score-want) > 1e-6 && !(math.IsInf(score, -1) && math.IsInf(want, -1)) {
			t.Errorf("case %d: best is %v, the general solver finds %v", i, score, want)
		}
		if ok && p.bindingRules(t) {
			bound++
		}
	}
	t.Logf("%d cases, %d of them held back by the rotation of the mix, %d without a sequence", cases, bound, none)
	if bound < cases/5 {
		t.Error("too few cases in which the rotation of the mix matters")
	}
}

// bindingRules reports whether the problem would be worth more without the rotation
// of the mix.
func (p *problem) bindingRules(t testing.TB) bool {
	t.Helper()
	free := *p
	free.options = slices.Clone(p.options)
	for o := range free.options {
		free.options[o].groups, free.options[o].kept = nil, nil
	}
	free.standingGroups, free.standingKept = nil, nil
	_, with, _ := newSolver(p, 0).solve()
	_, without, _ := newSolver(&free, 0).solve()
	return without > with+1e-9
}

// BenchmarkAgainstGLPK times both on the same cases: the planner's own search, and
// the general solver's run from its start to its proof.
func BenchmarkAgainstGLPK(b *testing.B) {
	solver := glpsol(b)
	r := rand.New(rand.NewPCG(2027, 3))
	cases := make([]*problem, 10)
	for i := range cases {
		cases[i] = randomProblem(r)
	}
	var own, general time.Duration
	for b.Loop() {
		for _, p := range cases {
			start := time.Now()
			newSolver(p, 0).solve()
			own += time.Since(start)
			start = time.Now()
			solveByGLPK(b, solver, p)
			general += time.Since(start)
		}
	}
	b.ReportMetric(float64(general)/float64(own), "times-own")
}
