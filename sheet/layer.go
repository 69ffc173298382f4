package sheet

// Layer is what a line or text means, in plain words. Writers keep layers apart under these names.
type Layer string

// The layers.
const (
	LayerFrame        Layer = "frame"
	LayerDetails      Layer = "frames of details"
	LayerReadings     Layer = "readings"
	LayerEllipses     Layer = "error ellipses"
	LayerAxes         Layer = "centre lines and baseline"
	LayerUnder        Layer = "under water"
	LayerAround       Layer = "deck and features"
	LayerPictures     Layer = "pictures"
	LayerEdge         Layer = "edge"
	LayerInferred     Layer = "edge inferred"
	LayerAlternatives Layer = "other places"
	LayerNext         Layer = "next reading"
	LayerMarks        Layer = "marks"
	LayerPegs         Layer = "pegs"
	LayerDimensions   Layer = "dimensions"
	LayerNumbers      Layer = "mark numbers"
	LayerWords        Layer = "words"
	LayerTables       Layer = "tables"
	LayerTitle        Layer = "title block"
)

// Layers is the closed list in the order of drawing, the lowest first.
var Layers = []Layer{
	LayerFrame, LayerPictures, LayerDetails, LayerReadings, LayerEllipses, LayerAxes, LayerUnder, LayerAround, LayerInferred, LayerEdge,
	LayerAlternatives, LayerNext, LayerMarks, LayerPegs, LayerDimensions, LayerNumbers, LayerWords, LayerTables, LayerTitle,
}
