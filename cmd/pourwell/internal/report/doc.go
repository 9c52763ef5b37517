// Package report writes one result value as text for people, and as JSON and
// CSV for programs. It knows units and layout, no physics.
package report
