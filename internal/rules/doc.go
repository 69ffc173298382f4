// Package rules keeps the house rules by reading the tree: who may import whom, what a stage of
// the chain may not do, which finding codes exist, which words are never printed, how files are
// named and formatted. Its tests run every rule over the tree, and every rule over planted
// sources that break it.
package rules
