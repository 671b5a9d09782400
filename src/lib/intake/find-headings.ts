// Which row of a list is its heading row, and what each column holds. Title lines may stand above
// it, the heading may take two lines, and "Part, Pin, Part, Pin" means the first end and the second.
import { type Column, type ColumnRole, type PairedRole } from './columns.ts';
import { readHeading, type HeadingMeaning } from './heading-words.ts';

export interface HeadingRows {
  readonly columns: readonly Column[];
  /** The first heading row, and how many rows the heading takes. */
  readonly row: number;
  readonly count: 1 | 2;
  /** How sure it is: columns understood, ends counting most. */
  readonly score: number;
}

const rowsToLookAt = 40;
const columnsToLookAt = 200;

const endOf: Readonly<Record<PairedRole, readonly [ColumnRole, ColumnRole]>> = {
  end: ['from', 'to'],
  part: ['fromPart', 'toPart'],
  terminal: ['fromTerminal', 'toTerminal']
};

const isPaired = (role: string): role is PairedRole => Object.hasOwn(endOf, role);

/** True for columns that a list may have several of; a second one of any other is kept under its heading. */
export const isRepeatable = (role: ColumnRole): boolean =>
  role === 'notes' || role === 'extra' || role === 'derived';

/** What each heading means, once all are seen: paired words become ends, "A" and "B" too. */
export const columnsOfHeadings = (headings: readonly string[]): Column[] => {
  const plain = headings.map((heading) => heading.trim().toLowerCase());
  const meanings = headings.map((heading): HeadingMeaning | null => readHeading(heading));
  const roles = meanings.map((meaning) => meaning?.role);
  const hasPairOfLetters = plain.includes('a') && plain.includes('b');
  if (!roles.includes('from') && hasPairOfLetters) {
    roles[plain.indexOf('a')] = 'from';
    roles[plain.indexOf('b')] = 'to';
  }
  // "Origin" and "Destination" are ends; beside "From" it is where the wire came from.
  const origin = roles.indexOf('origin');
  const hasFrom = roles.some((role) => role === 'from' || role === 'fromPart');
  if (!hasFrom && origin >= 0 && roles.includes('to')) roles[origin] = 'from';
  takeLoneEnd(roles);
  settlePairs(roles, plain);
  const seen = new Map<string, number>();
  const taken = new Set<ColumnRole>();
  const columns = headings.map((heading, index): Column => {
    const name = heading.trim() === '' ? `column ${index + 1}` : heading.trim();
    const role = roles[index] ?? 'extra';
    const nth = seen.get(role) ?? 0;
    seen.set(role, nth + 1);
    const wanted = (isPaired(role) ? endOf[role][nth] : role) ?? 'extra';
    // Two columns never fill one field: what the second holds is kept under its heading.
    const own = taken.has(wanted) && !isRepeatable(wanted) ? 'extra' : wanted;
    taken.add(own);
    return { index, role: own, heading: name, unit: meanings[index]?.unit ?? null };
  });
  // An end that stands whole in a column of its own needs no part from another.
  const hasWhole = { fromPart: taken.has('from'), toPart: taken.has('to') };
  return columns.map((column) =>
    (column.role === 'fromPart' || column.role === 'toPart') && hasWhole[column.role]
      ? { ...column, role: 'extra' }
      : column
  );
};

/** "Start" and "End", or "From" and "Part": the one end that has no side of its own takes the free one. */
const takeLoneEnd = (roles: (HeadingMeaning['role'] | undefined)[]): void => {
  const hasFrom = roles.includes('from');
  if (hasFrom === roles.includes('to')) return;
  for (const word of ['end', 'part'] as const) {
    if (roles.filter((role) => role === word).length !== 1) continue;
    roles[roles.indexOf(word)] = hasFrom ? 'to' : 'from';
    return;
  }
};

/** Beside "From" and "To" a pin belongs to the end that stands before it, and a part that stands
 *  there once is no end: "Item" counts the wires. */
const settlePairs = (
  roles: (HeadingMeaning['role'] | undefined)[],
  plain: readonly string[]
): void => {
  if (!roles.includes('from') || !roles.includes('to')) return;
  const parts = roles.filter((role) => role === 'part').length;
  let side: 'from' | 'to' = 'from';
  roles.forEach((role, index) => {
    if (role === 'from' || role === 'to') side = role;
    if (role === 'terminal') {
      const own = side === 'from' ? 'fromTerminal' : 'toTerminal';
      roles[index] = roles.includes(own) ? 'extra' : own;
    }
    if (role === 'end') roles[index] = 'extra';
    if (role !== 'part' || parts > 1) return;
    const counts = /^(?:item|ref|reference)/.test(plain[index] ?? '') && !roles.includes('number');
    roles[index] = counts ? 'number' : 'extra';
  });
};

/** A first column without a heading that counts the wires is their number. */
export const numberFirstColumn = (
  columns: readonly Column[],
  rows: readonly (readonly string[])[]
): readonly Column[] => {
  const [first, ...others] = columns;
  if (!first || first.role !== 'extra' || first.heading !== 'column 1') return columns;
  if (hasColumn(columns, 'number')) return columns;
  const cells = rows.map((row) => row[0] ?? '').filter((cell) => cell !== '');
  const counting = cells.filter((cell) => /^#?\d{1,5}[A-Za-z]?$/.test(cell));
  const isNumber = cells.length > 0 && counting.length >= cells.length * 0.6;
  return isNumber && new Set(counting).size > counting.length * 0.9
    ? [{ ...first, role: 'number', heading: 'No' }, ...others]
    : columns;
};

const hasEnd = (columns: readonly Column[], ...roles: readonly ColumnRole[]): boolean =>
  columns.some(({ role }) => roles.includes(role));

const scoreOf = (columns: readonly Column[]): number => {
  const from = hasEnd(columns, 'from', 'both', 'fromPart', 'fromTerminal');
  const to = hasEnd(columns, 'to', 'both', 'toPart', 'toTerminal');
  if (!from && !to) return 0;
  const understood = columns.filter(({ role }) => role !== 'extra').length;
  if (understood < 2) return 0;
  return understood + (from ? 3 : 0) + (to ? 3 : 0);
};

// The second line of a heading holds nothing but words that only make sense below another.
const isSubHeading = (row: readonly string[]): boolean => {
  const words = row.filter((cell) => cell !== '');
  const sub =
    /^(part|pin|terminal|term|lug|ref|type|tube|unit|colou?r|dc|ac|pulse|peak|rms|k?v|m?a|mm|cm|in|inches|awg|found|planned|new|old|no|#|volts|rating|gauge|end|size|notes|remarks|function|length|tracer)\.?$/i;
  return words.length >= 2 && words.every((word) => sub.test(word));
};

// "Pin" below "From" is the first end's pin; "Notes" below "Volts" is notes.
const joinHeading = (group: string, above: string, below: string): string => {
  if (below === '') return above;
  const joined = `${group} ${below}`.trim();
  const role = readHeading(joined)?.role;
  if (role !== undefined && /^(?:from|to|planned)./.test(role)) return joined;
  const alone = readHeading(below)?.role;
  return alone !== undefined && !isPaired(alone) ? below : joined;
};

const joinHeadings = (upper: readonly string[], lower: readonly string[]): string[] => {
  let group = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, index) => {
    const above = upper[index] ?? '';
    if (above !== '') group = above;
    return joinHeading(group, above, lower[index] ?? '');
  });
};

/** The heading row that most columns can be understood by, or null where no row names an end. */
export const findHeadings = (rows: readonly (readonly string[])[]): HeadingRows | null => {
  let best: HeadingRows | null = null;
  for (const [row, cells] of rows.slice(0, rowsToLookAt).entries()) {
    const headings = cells.slice(0, columnsToLookAt);
    const next = rows[row + 1]?.slice(0, columnsToLookAt) ?? [];
    const readings: readonly (readonly [string[], 1 | 2])[] = isSubHeading(next)
      ? [
          [joinHeadings(headings, next), 2],
          [headings, 1]
        ]
      : [[headings, 1]];
    for (const [joined, count] of readings) {
      const columns = columnsOfHeadings(joined);
      const score = scoreOf(columns);
      if (score > 0 && (best === null || score > best.score)) best = { columns, row, count, score };
    }
  }
  return best;
};

/** True for a row that repeats the headings, as each page of a printed list does. The second line
 *  of a heading repeats without its first. */
export const isRepeatedHeading = (
  cells: readonly string[],
  columns: readonly Column[]
): boolean => {
  let same = 0;
  let filled = 0;
  for (const { index, heading } of columns) {
    const cell = cells[index] ?? '';
    if (cell === '') continue;
    filled += 1;
    const plain = cell.toLowerCase();
    if (plain === heading.toLowerCase() || heading.toLowerCase().endsWith(` ${plain}`)) same += 1;
  }
  return filled > 1 && same === filled;
};

/** True where the list has a column for the role. */
export const hasColumn = (columns: readonly Column[], role: ColumnRole): boolean =>
  columns.some((column) => column.role === role);
