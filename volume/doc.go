// Package volume counts beer: vessels, glasses, pours, guests and taps.
package volume
