// Package carbonation answers questions about gas in beer.
package carbonation
