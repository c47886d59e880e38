// Package planfile is the plan on disk: one YAML file that a person can read,
// edit by hand and keep under version control.
//
// [Decode] reads a file strictly: unknown keys, wrong types, missing units,
// numbers out of range, duplicate ids and broken references are all reported at
// once, each with its line, its column and its path in the plan. [Document]
// keeps the text it was read from, so that [Document.Encode] changes only the
// lines whose meaning changed: comments, order, blank lines and lengths as they
// were typed ("14 in") stay. [Encode] writes a plan that has no file yet.
//
// [Store] loads and saves files. A save writes a new file beside the old one,
// syncs it and renames it over the old one, so that at every moment the old or
// the new plan is whole; previous copies and a journal of unsaved work are kept
// in a folder of the caller's choice. [Merge] brings two versions of a plan with
// a common ancestor together, field by field.
//
// The format is described in FORMAT.md beside this file and, for other programs,
// in schema.json ([Schema]). YAML is read as YAML 1.2 by gopkg.in/yaml.v3, less
// anchors, aliases, tags and several documents in one file, which a plan never
// needs and a hostile file would misuse.
//
// Limits: the reader refuses files that are larger, deeper or longer than the
// constants in limits.go say. A save is as durable as the file system's own
// promise for fsync and rename; network file systems may promise less.
package planfile
