// Whether commas in a column are decimal signs. One cell may not tell ("1,250"), the whole column
// mostly does, and failing that the other columns of the list.

export type CommaUse = 'decimal' | 'thousands' | 'not told' | 'mixed';

const decimalCell = /(?<![\d.,])(?:0,\d+|\d+,(?:\d{1,2}|\d{4,}))(?![\d,.])|\d\.\d{3},\d/;
const pointCell =
  /(?<![\d.,])\d*\.(?:\d{1,2}|\d{4,})(?![\d,.])|(?<![\d.,])0\.\d+|\d,\d{3}\.\d|\d,\d{3},\d{3}/;

/** What the cells of a column say of its commas. */
export const commaUseOf = (cells: Iterable<string>): CommaUse => {
  let decimal = false;
  let point = false;
  for (const cell of cells) {
    const text = cell.slice(0, 60);
    if (decimalCell.test(text)) decimal = true;
    if (pointCell.test(text)) point = true;
  }
  if (decimal && point) return 'mixed';
  return decimal ? 'decimal' : point ? 'thousands' : 'not told';
};

/** The column's own use where it is told, else that of all columns together, else undefined: then
 *  each cell is read by its own digits. */
export const decimalCommaOf = (own: CommaUse, all: CommaUse): boolean | undefined => {
  const use = own === 'not told' ? all : own;
  return use === 'decimal' ? true : use === 'thousands' ? false : undefined;
};

/** A number that could be 1.25 as well as 1250. */
export const isAmbiguousComma = (cell: string): boolean =>
  /^[~<>+-]?\s*[1-9]\d{0,2},\d{3}(?![\d,.])/.test(cell.trim());
