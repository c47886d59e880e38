package nutrition

import (
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// SolubilityFinding reports a concentrate stronger than dissolves, with the largest
// ratio that the injector may be set to at the same strength. limit 0 takes
// [UsualSolubility]. where names the product or the round.
func SolubilityFinding(where finding.Where, s Solution, i Injector, limit Concentration) (f finding.Finding, ok bool) {
	if limit == 0 {
		limit = UsualSolubility
	}
	stock := s.Stock(i)
	if stock <= limit || s.Product <= 0 {
		return finding.Finding{}, false
	}
	most := float64(limit / s.Product)
	if i.Convention == PartsAdded {
		most--
	}
	return finding.Finding{
		Code: "nutrition.stock_too_strong", Severity: finding.Warning, Where: where,
		Args: []finding.Arg{
			{Name: "stock", Value: working.Number(float64(stock), working.GramPerLitre)},
			{Name: "limit", Value: working.Number(float64(limit), working.GramPerLitre)},
			{Name: "ratio", Value: working.Number(i.Ratio, working.None)},
			{Name: "most", Value: working.Number(max(0, most), working.None)},
		},
	}, true
}

// PhosphorusFinding notes a feed that carries more phosphorus than nitrogen at the
// strength wanted, as bloom products such as 10-52-10 do: 100 ppm N bring 227 ppm P.
// That plants need less of it is common practice, no source.
func PhosphorusFinding(where finding.Where, s Solution) (f finding.Finding, ok bool) {
	if s.Phosphorus() <= s.Nitrogen() {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: "nutrition.phosphorus_high", Severity: finding.Note, Where: where,
		Args: []finding.Arg{
			{Name: "analysis", Value: working.Text(s.Analysis.String())},
			{Name: "nitrogen", Value: working.Number(float64(s.Nitrogen()), working.MilligramPerLitre)},
			{Name: "phosphorus", Value: working.Number(float64(s.Phosphorus()), working.MilligramPerLitre)},
		},
	}, true
}

// StrengthFinding reports a strength outside the band of the feeder class, for each
// feed at its full strength.
func StrengthFinding(where finding.Where, s Solution, c Class) (f finding.Finding, ok bool) {
	n := float64(s.Nitrogen())
	code := ""
	switch {
	case n > c.Strength.High*(1+1e-9):
		code = "nutrition.strength_high"
	case n < c.Strength.Low*(1-1e-9):
		code = "nutrition.strength_low"
	default:
		return finding.Finding{}, false
	}
	return finding.Finding{
		Code: code, Severity: finding.Note, Where: where,
		Args: []finding.Arg{
			{Name: "feeder", Value: working.Text(c.Feeder.Key())},
			{Name: "nitrogen", Value: working.Number(n, working.MilligramPerLitre)},
			{Name: "low", Value: working.Number(c.Strength.Low, working.MilligramPerLitre)},
			{Name: "high", Value: working.Number(c.Strength.High, working.MilligramPerLitre)},
		},
	}, true
}
