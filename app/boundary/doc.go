// Package boundary holds the tests of the rules between the packages of Fourturn.
//
// DEVELOPERS.md gives the rooms and why they are apart. The tests here read the
// imports, the go statements and the calls of the clock in every Go file, whatever
// its build tags, and fail where a file breaks a rule. The archives in
// testdata/boundary each break one rule on purpose and prove that it is seen.
//
// A rule may have an exception; each stands in a list with its reason, and one
// that nobody needs any longer is a failure too.
package boundary
