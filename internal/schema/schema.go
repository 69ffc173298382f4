// Package schema makes the printed JSON Schemas from the Go types: of the field book from the
// forms that its decoder is driven by, of the result from the types that are printed. It stands
// apart so that the packages it describes need no schema library.
package schema

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"brimline/fieldbook"
	"brimline/survey"

	"github.com/invopop/jsonschema"
)

// Book gives the JSON Schema (draft 2020-12) of a field book, version 1, as far as this program
// reads it. A YAML book is checked by it as the JSON it is equal to.
func Book() ([]byte, error) {
	r := reflector("book")
	s := r.ReflectFromType(reflect.TypeFor[fieldbook.Form]())
	s.Title = "brimline field book, version 1"
	if p, ok := s.Properties.Get("brimline"); ok {
		p.Const = 1
	}
	return printed(s)
}

// Result gives the JSON Schema (draft 2020-12) of what `solve --json` prints.
func Result() ([]byte, error) {
	r := reflector("json")
	r.RequiredFromJSONSchemaTags = false
	t := reflect.TypeFor[survey.Result]()
	s := r.ReflectFromType(t)
	s.Title = "brimline result, version 1"
	nullable(t, s)
	return printed(s)
}

func printed(s *jsonschema.Schema) ([]byte, error) {
	s.ID = ""
	out, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return nil, fmt.Errorf("print the schema: %w", err)
	}
	return out, nil
}

func reflector(tag string) *jsonschema.Reflector {
	r := &jsonschema.Reflector{Anonymous: true, DoNotReference: true, RequiredFromJSONSchemaTags: true, FieldNameTag: tag}
	if tag == "book" {
		r.Mapper = func(t reflect.Type) *jsonschema.Schema { return bookType(r, t) }
	}
	return r
}

// bookType gives the schema of the types that a field book writes in more than one way.
func bookType(r *jsonschema.Reflector, t reflect.Type) *jsonschema.Schema {
	switch t {
	case reflect.TypeFor[fieldbook.ReadingForm]():
		return readings(r)
	case reflect.TypeFor[fieldbook.LineForm]():
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{inner(r, reflect.TypeFor[fieldbook.RunsForm]()), inner(r, reflect.TypeFor[fieldbook.DerivedForm]())}}
	case reflect.TypeFor[fieldbook.LevelRuleForm]():
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{single(reflect.TypeFor[fieldbook.Text]()), inner(r, reflect.TypeFor[fieldbook.OwnLevelRule]())}}
	case reflect.TypeFor[fieldbook.RowForm]():
		return row()
	case reflect.TypeFor[fieldbook.Sigma](), reflect.TypeFor[fieldbook.AngleSigma]():
		l := single(reflect.TypeFor[fieldbook.Length]())
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{l, {Type: "array", Items: l}}}
	case reflect.TypeFor[fieldbook.Raw]():
		return &jsonschema.Schema{AnyOf: types("object", "null")}
	}
	if t.Kind() == reflect.Slice && strings.HasPrefix(t.Elem().Name(), "Named[") {
		return table(r, t.Elem())
	}
	return single(t)
}

// single is a single value; nil for what is none.
func single(t reflect.Type) *jsonschema.Schema {
	switch t {
	case reflect.TypeFor[fieldbook.Text]():
		return &jsonschema.Schema{AnyOf: types("string", "number", "boolean", "null")}
	case reflect.TypeFor[fieldbook.Name]():
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "string", Pattern: `^\S+$`}, {Type: "number"}, {Type: "boolean"}, {Type: "null"}}}
	case reflect.TypeFor[fieldbook.Pair]():
		return &jsonschema.Schema{Type: "string", Pattern: `^\s*\S+\s+\S+\s*$`}
	case reflect.TypeFor[fieldbook.Row]():
		return &jsonschema.Schema{Type: "string", Pattern: `^\s*\S+(\s+\S+)+\s*$`}
	case reflect.TypeFor[fieldbook.Length](), reflect.TypeFor[fieldbook.Angle](), reflect.TypeFor[fieldbook.Solvable](), reflect.TypeFor[fieldbook.Figure]():
		return &jsonschema.Schema{AnyOf: types("number", "string")}
	case reflect.TypeFor[fieldbook.Flag]():
		return &jsonschema.Schema{Type: "boolean"}
	case reflect.TypeFor[fieldbook.Choice]():
		return &jsonschema.Schema{Type: "string"}
	case reflect.TypeFor[fieldbook.Date]():
		return &jsonschema.Schema{Type: "string", Format: "date"}
	case reflect.TypeFor[fieldbook.Clock]():
		return &jsonschema.Schema{Type: "string", Pattern: `^\d\d:\d\d(:\d\d)?$`}
	case reflect.TypeFor[fieldbook.Moment]():
		return &jsonschema.Schema{Type: "string", Format: "date-time"}
	}
	return nil
}

func types(names ...string) []*jsonschema.Schema {
	var out []*jsonschema.Schema
	for _, n := range names {
		out = append(out, &jsonschema.Schema{Type: n})
	}
	return out
}

// table is a block whose keys are names.
func table(r *jsonschema.Reflector, named reflect.Type) *jsonschema.Schema {
	form, ok := named.FieldByName("Form")
	if !ok {
		return nil
	}
	value := single(form.Type)
	if value == nil {
		if value = bookType(r, form.Type); value != nil {
			return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "object", AdditionalProperties: value}, {Type: "null"}}}
		}
		value = inner(r, form.Type)
		if len(value.Required) == 0 {
			value = &jsonschema.Schema{AnyOf: []*jsonschema.Schema{value, {Type: "null"}}}
		}
	}
	return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "object", AdditionalProperties: value}, {Type: "null"}}}
}

// row is one row of a column: a mark and its length.
func row() *jsonschema.Schema {
	two := uint64(2)
	return &jsonschema.Schema{Type: "array", MinItems: &two, MaxItems: &two, PrefixItems: []*jsonschema.Schema{
		single(reflect.TypeFor[fieldbook.Name]()), single(reflect.TypeFor[fieldbook.Length]())}}
}

// readings is one item of the list: any kind of the lists of kinds.
func readings(r *jsonschema.Reflector) *jsonschema.Schema {
	s := &jsonschema.Schema{}
	for _, family := range [][]fieldbook.Kind{fieldbook.Kinds, fieldbook.Columns, fieldbook.Asides} {
		for _, k := range family {
			one := inner(r, reflect.TypeOf(k.Form()).Elem())
			one.Title = k.Name()
			s.AnyOf = append(s.AnyOf, one)
		}
	}
	return s
}

func inner(r *jsonschema.Reflector, t reflect.Type) *jsonschema.Schema {
	s := r.ReflectFromType(t)
	s.Version, s.ID = "", ""
	return s
}

// nullable lets null stand where the Go type is a pointer, all the way down.
func nullable(t reflect.Type, s *jsonschema.Schema) {
	switch t.Kind() {
	case reflect.Pointer:
		nullable(t.Elem(), s)
	case reflect.Slice, reflect.Array:
		if s.Items != nil {
			nullable(t.Elem(), s.Items)
		}
	case reflect.Map:
		if s.AdditionalProperties != nil {
			nullable(t.Elem(), s.AdditionalProperties)
		}
	case reflect.Struct:
		for i := range t.NumField() {
			f := t.Field(i)
			name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			p, ok := s.Properties.Get(name)
			if !ok {
				continue
			}
			nullable(f.Type, p)
			if f.Type.Kind() == reflect.Pointer {
				s.Properties.Set(name, &jsonschema.Schema{AnyOf: []*jsonschema.Schema{p, {Type: "null"}}})
			}
		}
	}
}
