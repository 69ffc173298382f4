// Package glb writes surfaces and lines in space as a binary glTF file (GLB container version 2), for
// viewers of three-dimensional shapes. In goes a Scene in metres with z upward; out come metres
// with y upward, as the format asks. The same scene gives the same bytes. Surfaces have no
// normals, so that a viewer shades every triangle flat: nothing looks rounder than it was measured.
//
// Source: Khronos Group, glTF 2.0 Specification, version 2.0.1 (also ISO/IEC 12113:2022); the numbers
// of sections in the comments are its own.
package glb
