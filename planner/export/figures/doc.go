// Package figures writes everything worked out for a plan as JSON, for programs.
//
// Keys are stable and carry their unit: volume_to_brim_L, wet_mass_kg. Every
// figure is an object {"value": …, "working": …}; a figure that could not be
// worked out is null, and a finding says why. Dates are ISO 8601. The key "format"
// names the version; keys are added within a version, never renamed or removed.
//
// A working has "name" (the key of the figure), "formula", "inputs" (each with
// "symbol", "name", "value" or "date" or "text", "unit", "status", "source" and,
// where it was itself worked out, "working"), "unit", "status", "source" and "notes".
package figures
