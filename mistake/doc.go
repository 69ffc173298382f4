// Package mistake names human mistakes in a field book: it weighs every mistake that people are
// known to make, in every reading and in groups of readings, against each other and against none,
// and says which reading is wrong, what was probably done, and what cannot be told apart.
//
// In: a solution of all readings, the field book. Out: a Report whose solution leaves the mistaken
// readings out. Metres and radians. It applies no correction: it offers edits.
//
// With ê the size of an error in a reading as the others see it and s its standard deviation, a
// mistake of known size e and prior p scores w²/2 − (ê − e)²/(2s²) + ln p, one of unknown size
// w²/2 + ln(p·s·√(2π)/range), none at all ln(1 − Σp). Two readings at one mark are weighed as one:
// with S the covariance of both errors and e, ê of two, the misfit is (ê − e)ᵀS⁻¹(ê − e)/2. A group
// scores half the drop of the weighted sum of squares by a solution of its own, less a term of the
// same form for each size that it leaves open. These are log posteriors by Bayes' rule with flat or
// sharp priors on the size (H. Jeffreys, Theory of Probability, 1961, chapter 5).
package mistake
