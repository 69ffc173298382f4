// Package advise answers the three questions of the pool side from a solution: what to read next,
// whether what stands is good enough for what will be made from it, and what it would mean to
// leave now.
//
// In: an adjusted solution, the listed human mistakes with their chances (package mistake), the
// readings that are suspect or doubtful, and orders as lists of figures with tolerances. Out:
// verdicts, the weakest places, proposals, all as numbers and codes; words.go makes the
// sentences. Nothing is solved again: what one more reading would do follows from rank-one
// updates of the covariance (B. Noble and J. Daniel, Applied Linear Algebra, 1988, section 1.4),
//
//	D = s² + a·C·aᵀ   C′ = C − C·aᵀ·a·C/D   quad′ = quad + (a·Δ)²/D   Δ′ = Δ − C·aᵀ·(a·Δ)/D
//
// where a holds the derivatives of the new reading, s its standard deviation, Δ the moves that an
// error causes and quad what it adds to the sum of squares. The new reading is taken to read what
// the figure predicts. Metres, radians, minutes; inner datum of the solution.
package advise
