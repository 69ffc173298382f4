// Package simulate makes pools whose truth is known, and the field books that a measurer would
// bring home from them: a figure of a known family, pegs and marks, readings with the noise that
// the book states, typed to the millimetre.
//
// In go a seed, a shape, a method and options; out comes a Case with the text of the book and
// everything true behind it, in metres and radians, in the frame of the pegs: A at the origin, B
// on +x. It knows no formula of the solver: of ours it imports plane only. Marks are named
// r1, r2, … clockwise seen from above, from the mark nearest to peg A; Outline runs
// counter-clockwise as rings do. Visit measures as a Plan says; Plant, Groups and Assumptions
// make of a case another one with human mistakes or with what its book states untrue, and say
// what they did. Not made here: heights, walks, pictures.
//
// Sizes and habits follow what measurers do, common practice, no source, where no other is named.
package simulate
