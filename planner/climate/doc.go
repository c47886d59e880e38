// Package climate turns a place into the days on which things can happen.
package climate
