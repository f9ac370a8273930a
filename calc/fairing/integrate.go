package fairing

// weights gives the weights of n evenly spaced points for the integral over
// them: Simpson's first rule where the intervals are even in number, with his
// second (3/8) rule for the last three where they are odd, and the trapezoid
// for a single interval. All weights are above zero, so a volume never comes
// out negative. n must be 2 or more.
// Source: elementary geometry (Newton–Cotes); exact for cubics from 3 points on.
func weights(n int, gap float64) []float64 {
	w := make([]float64, n)
	if n == 2 {
		add(w, gap/2, 1, 1)
		return w
	}
	simpson := n - 1
	if simpson%2 == 1 {
		simpson -= 3
		add(w[simpson:], gap*3/8, 1, 3, 3, 1)
	}
	for i := 0; i < simpson; i += 2 {
		add(w[i:], gap/3, 1, 4, 1)
	}
	return w
}

func add(w []float64, scale float64, pattern ...float64) {
	for i, p := range pattern {
		w[i] += scale * p
	}
}
