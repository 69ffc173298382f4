// Package sheet holds a drawing and its tables as plain data. Everything on a Sheet stands in
// millimetres of paper, x to the right and y up from the lower left corner of the trimmed sheet;
// angles are radians counter-clockwise. A View says how a part of the sheet came from the model's
// metres, so that a writer can go back. The package knows nothing of pools and nothing of file
// formats: `draft` makes sheets, `write` turns them into files.
//
// Dimensions, hatches and tables are data too; Flat turns them into the few plain shapes that
// every writer knows, so that all writers draw them alike.
//
// Main sources: ISO 128 (lines), ISO 129-1 (dimensions), ISO 3098 (lettering), ISO 5455 (scales),
// ISO 5457 with ISO 216 and ASME Y14.1 (sizes and frames).
package sheet
