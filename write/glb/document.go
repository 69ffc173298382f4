package glb

// The numbers that stand for kinds in the format (sections 3.6 and 3.7).
const (
	float32Component = 5126
	uint32Component  = 5125
	vertexTarget     = 34962
	indexTarget      = 34963
	modeLines        = 1
	modeTriangles    = 4
)

// document is the JSON part of a file, with the keys of the specification that are used here.
type document struct {
	Asset       asset      `json:"asset"`
	Scene       int        `json:"scene"`
	Scenes      []scene    `json:"scenes"`
	Nodes       []node     `json:"nodes,omitempty"`
	Meshes      []body     `json:"meshes,omitempty"`
	Materials   []material `json:"materials,omitempty"`
	Accessors   []accessor `json:"accessors,omitempty"`
	BufferViews []view     `json:"bufferViews,omitempty"`
	Buffers     []buffer   `json:"buffers,omitempty"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
}

type scene struct {
	Name  string `json:"name,omitempty"`
	Nodes []int  `json:"nodes,omitempty"`
}

// node places a mesh, or carries others.
type node struct {
	Name        string      `json:"name,omitempty"`
	Mesh        *int        `json:"mesh,omitempty"`
	Children    []int       `json:"children,omitempty"`
	Translation *[3]float64 `json:"translation,omitempty"`
}

type body struct {
	Name       string      `json:"name,omitempty"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes map[string]int `json:"attributes"` // of one key, so in no order
	Indices    int            `json:"indices"`
	Material   int            `json:"material"`
	Mode       int            `json:"mode"`
}

type material struct {
	Name        string `json:"name,omitempty"`
	Surface     metal  `json:"pbrMetallicRoughness"`
	AlphaMode   string `json:"alphaMode,omitempty"`
	DoubleSided bool   `json:"doubleSided"`
}

type metal struct {
	Colour    Paint   `json:"baseColorFactor"`
	Metallic  float64 `json:"metallicFactor"`
	Roughness float64 `json:"roughnessFactor"`
}

type accessor struct {
	View      int       `json:"bufferView"`
	Component int       `json:"componentType"`
	Count     int       `json:"count"`
	Type      string    `json:"type"`
	Min       []float32 `json:"min,omitempty"`
	Max       []float32 `json:"max,omitempty"`
}

type view struct {
	Buffer int `json:"buffer"`
	Offset int `json:"byteOffset"`
	Length int `json:"byteLength"`
	Target int `json:"target"`
}

type buffer struct {
	Length int `json:"byteLength"`
}
