// Package season is where a house meets a place: what a mean year of heat costs it.
package season
