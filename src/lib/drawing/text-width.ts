// How wide a text is on the drawing, reckoned from the bundled faces' own advances: the same in
// every writer, with no screen to ask.
import { advances, type FaceName } from './advances.ts';

/** Advance of a letter that the faces lack, in thousandths of the size: wide rather than too narrow. */
const missingAdvance = 620;
/** Ideographs and the like are as wide as they are high. */
const isWide = (point: number): boolean => point >= 0x2e80;

const buildTable = (name: FaceName): ReadonlyMap<number, number> => {
  const table = new Map<number, number>();
  for (const [from, widths] of advances[name]) {
    widths.forEach((width, index) => table.set(from + index, width));
  }
  return table;
};

const tables: Readonly<Record<FaceName, ReadonlyMap<number, number>>> = {
  sans: buildTable('sans'),
  sansBold: buildTable('sansBold'),
  mono: buildTable('mono'),
  monoBold: buildTable('monoBold')
};

/** How a text is set: `size` is the size of the face in mm. */
export interface TextLook {
  readonly size: number;
  readonly face: 'sans' | 'mono';
  readonly bold?: boolean;
}

/** Width of a text in mm, `size` being the size of the face in mm. Letters that the faces lack count
 *  0.62 of the size, ideographs the whole size. */
export const textWidthMm = (text: string, { size, face, bold }: TextLook): number => {
  const table = tables[`${face}${bold ? 'Bold' : ''}`];
  let sum = 0;
  for (const letter of text) {
    const point = letter.codePointAt(0) ?? 0;
    sum += table.get(point) ?? (isWide(point) ? 1000 : missingAdvance);
  }
  return (sum * size) / 1000;
};

/** The text, cut with an ellipsis where it is wider than `widthMm`. */
export const fitText = (text: string, widthMm: number, look: TextLook): string => {
  if (textWidthMm(text, look) <= widthMm) return text;
  const letters = [...text];
  while (letters.length > 0 && textWidthMm(`${letters.join('')}…`, look) > widthMm) letters.pop();
  return `${letters.join('').trimEnd()}…`;
};

/** The text in lines no wider than `widthMm`, broken between words; a longer word stands alone, cut. */
export const wrapText = (text: string, widthMm: number, look: TextLook): string[] => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidthMm(longer, look) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = fitText(word, widthMm, look);
  }
  if (line !== '') lines.push(line);
  return lines;
};
