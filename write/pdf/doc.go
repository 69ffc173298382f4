// Package pdf writes sheets as one PDF document, one page a sheet: true to scale, text that can be
// searched and copied, the font embedded. The same sheets and Meta give the same bytes. Source of
// the drawing operators: ISO 32000-1:2008, clause 8.
package pdf
