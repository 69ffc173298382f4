// Package draft makes drawings from results: from a field book and what was computed of it, the
// sheets of the measured plan with its tables. It rounds, arranges and words; it computes nothing
// that the result does not say and changes nothing of it. What comes out is data of package sheet,
// in millimetres of paper; nothing depends on clocks, files or the order of a map.
//
// The rules of the drawing: the edge wide, everything else narrow; numbers of marks outside the
// pool; no text touches another, the edge or a line; what finds no room stands in details, which are
// parts of the plan drawn larger on further sheets, or in the tables, and the sheet says so.
package draft
