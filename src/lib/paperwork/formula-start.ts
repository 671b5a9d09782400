// How a text begins that a spreadsheet would run as a formula, wherever cells are written for one.
// Source: OWASP, CSV Injection: = + - @, tab and carriage return; a line feed in front of them as well.

/** Matches at the start alone: what stands behind, a second line too, is of no matter. */
export const formulaStart = /^[=+\-@\t\r\n]/;
