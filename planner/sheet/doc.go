// Package sheet reads the rows of a list out of a file that a spreadsheet wrote: a
// workbook (.xlsx, ECMA-376), or text parted by commas, semicolons or tabs (.csv as in
// RFC 4180, .tsv). It returns text: what the cells mean is the business of who asked.
//
// A workbook is not trusted. Its parts are unpacked up to a limit before anything
// reads them, so that a small file cannot fill the memory; formulas are not worked
// out, the value that the spreadsheet stored is taken; links, macros and whatever
// else is in it are passed over. Of several sheets the one that lay on top when it
// was saved is read, or the first after it that holds anything.
//
// Text is UTF-8, or UTF-16 with its mark, or else taken for Windows-1252, in which
// older spreadsheets write.
package sheet
