// Package plan plans the whole day of serving kegs outdoors from one file. It
// composes the four packages and owns no physics: every number in a [Plan] is
// what one of them answers for inputs that the plan names.
package plan
