package heat

import "math"

// Nodes are the shares of the difference between a body and where it settles, at
// which its films are worked out.
var Nodes = [...]float64{1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05, 0.02}

// leastDrive is the least difference, K, for which films are worked out. A
// surface is known to 1e-4 K, so that less of one would leave the last of the
// nodes nothing but noise.
const leastDrive = 0.5

// Drive returns the difference, K, for which the films of a body are worked out
// that is theta away from where it settles: theta itself, or half a kelvin.
func Drive(theta float64) float64 {
	if math.Abs(theta) < leastDrive {
		return math.Copysign(leastDrive, theta)
	}
	return theta
}

// A Relaxation is the way of a difference to zero, dθ/ds = −θ/τ(θ), with τ
// linear in θ between nodes. The difference at the start counts as 1.
type Relaxation [len(Nodes)]float64

// After returns what is left of the difference when s has passed, in the unit
// of τ: within a segment τ = a + bθ and
//
//	s = a ln(θ₁/θ) + b (θ₁ − θ)
func (r *Relaxation) After(s float64) float64 {
	for i := 1; i < len(Nodes); i++ {
		a, b := r.segment(i)
		whole := a*math.Log(Nodes[i-1]/Nodes[i]) + b*(Nodes[i-1]-Nodes[i])
		if s > whole {
			s -= whole
			continue
		}
		// Newton's method on ln θ; the slope a + bθ is τ, which never changes
		// sign, and a few steps reach rounding.
		theta := Nodes[i-1] * math.Exp(-s/r[i-1])
		for range 20 {
			miss := a*math.Log(Nodes[i-1]/theta) + b*(Nodes[i-1]-theta) - s
			step := math.Exp(miss / (a + b*theta))
			theta *= step
			if math.Abs(step-1) < 1e-15 {
				break
			}
		}
		return theta
	}
	last := len(Nodes) - 1
	return Nodes[last] * math.Exp(-s/r[last])
}

// Until returns when theta of the difference is left; for a theta not below the
// last node.
func (r *Relaxation) Until(theta float64) float64 {
	s := 0.0
	for i := 1; i < len(Nodes); i++ {
		a, b := r.segment(i)
		low := math.Max(theta, Nodes[i])
		s += a*math.Log(Nodes[i-1]/low) + b*(Nodes[i-1]-low)
		if low == theta {
			break
		}
	}
	return s
}

// segment returns a and b of τ = a + bθ between the nodes i−1 and i.
func (r *Relaxation) segment(i int) (a, b float64) {
	b = (r[i-1] - r[i]) / (Nodes[i-1] - Nodes[i])
	return r[i] - b*Nodes[i], b
}
