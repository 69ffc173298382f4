package advise

// Reason is why an order is not ready or a reading is proposed: a code of the closed list with
// what it speaks of. Sentences are made of it in words.go.
type Reason struct {
	Code     string
	At       string // mark whose figure it is; "" where it concerns the order
	Marks    []int
	Obs      []int  // readings, as observations of the network
	Mistake  string // code of the listed mistake
	From, To float64
	Sum      float64 // unseen: the odds of all listed mistakes together
	Again    bool    // suspect: it was read again since
}

// Reasons is the closed list of codes: of verdicts first, then of proposals.
var Reasons = []string{
	"unplaced", // a mark has no place
	"outside",  // From is the value, To its tolerance
	"suspect",  // From is the move by a suspect reading, To the limit
	"doubtful", // From is the move by a doubtful group, To the limit
	"wide",     // From is the U95, To its limit
	"near",     // From is the value, To its tolerance: may lie outside
	"unseen",   // From is the size of the mistake where it has one, To its odds

	"fixes",   // a mark that nothing fixes
	"side",    // on which side a mark lies
	"tells",   // which reading of a doubtful group is wrong
	"again",   // a suspect reading read again
	"repeat",  // a reading that nothing checks, or that disagrees with most, read a second time
	"base",    // the base read again
	"control", // marks whose readings would be checked
	"smaller", // marks that are controlled: a smaller mistake would show
	"sharper", // From and To: the largest U95 of the order before and after
}
