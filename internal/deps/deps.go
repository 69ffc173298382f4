package deps

import (
	_ "codeberg.org/go-pdf/fpdf"
	_ "github.com/goccy/go-yaml/parser"
	_ "github.com/google/go-cmp/cmp"
	_ "github.com/google/go-cmp/cmp/cmpopts"
	_ "github.com/google/uuid"
	_ "github.com/invopop/jsonschema"
	_ "github.com/rogpeppe/go-internal/testscript"
	_ "github.com/santhosh-tekuri/jsonschema/v6"
	_ "github.com/spf13/cobra"
	_ "golang.org/x/image/font/sfnt"
	_ "gonum.org/v1/gonum/mat"
	_ "gonum.org/v1/gonum/stat/distuv"
	_ "pgregory.net/rapid"
)
