// One spelling for the many characters that mean the same thing, so that the reader after it sees
// plain digits, one micro sign, one ohm sign, one kind of quote, one kind of space.

const replacements: ReadonlyMap<string, string> = new Map([
  ['\u03BC', 'µ'],
  ['\u2126', 'Ω'],
  ['\u00A0', ' '],
  ['\u2007', ' '],
  ['\u2009', ' '],
  ['\u202F', ' '],
  ['\t', ' '],
  ['\u2010', '-'],
  ['\u2011', '-'],
  ['\u2012', '-'],
  ['\u2013', '-'],
  ['\u2212', '-'],
  ['\u2032', "'"],
  ['\u2018', "'"],
  ['\u2019', "'"],
  ['\u2033', '"'],
  ['\u201C', '"'],
  ['\u201D', '"'],
  ['\u2044', '/'],
  ['\u2215', '/'],
  ['\u00D7', 'x'],
  ['\u00BA', '°'],
  ['\u00B2', '2'],
  ['\u2103', '°C'],
  ['\u2109', '°F'],
  ['\u00BC', ' 1/4'],
  ['\u00BD', ' 1/2'],
  ['\u00BE', ' 3/4'],
  ['\u215B', ' 1/8'],
  ['\u215C', ' 3/8'],
  ['\u215D', ' 5/8'],
  ['\u215E', ' 7/8']
]);

/** The text in its one spelling: spaces single, none at the ends, two feet marks an inch mark. */
export function normaliseText(text: string): string {
  let plain = '';
  for (const character of text) plain += replacements.get(character) ?? character;
  return plain
    .replaceAll("''", '"')
    .split(' ')
    .filter((word) => word !== '')
    .join(' ');
}
