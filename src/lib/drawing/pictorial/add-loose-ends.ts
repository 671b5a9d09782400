// What stands at the end of a line that ends before its wire does: a query where nobody found the far
// end, words where it is known but has no place.
import type { Id } from '#document/index.ts';
import { Sketch, type Box } from '../figures/figure.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import type { WireLine } from './pictorial-geometry.ts';
import type { SheetItems } from './sheet-items.ts';
import { minus, plus, times, unitOf } from './vectors.ts';

const ringMm = 1.7;
const wordsLook = { size: typeSizes.small, face: 'sans' } as const;
const queryLook = { size: typeSizes.number, face: 'sans', bold: true } as const;

/** Where a stub's ring stands, beyond the end of its line, and its words beside it. */
export interface LooseMark {
  readonly wire: Id;
  readonly words: string;
  readonly query: boolean;
  readonly at: Spot;
  readonly box: Box;
}

/** The marks of all lines that end before their wires do. */
export const listLooseMarks = (lines: readonly WireLine[]): readonly LooseMark[] =>
  lines.flatMap(({ wire, way, line }): LooseMark[] => {
    const end = line.at(-1);
    const before = line.at(-2);
    if (!way.loose || !end || !before) return [];
    const along = unitOf(minus(end, before));
    const query = way.loose.why === 'not found';
    if (query) {
      const at = plus(end, times(along, ringMm));
      const box = { x: at.x - ringMm, y: at.y - ringMm, width: 2 * ringMm, height: 2 * ringMm };
      return [{ wire, words: way.loose.words, query, at, box }];
    }
    const words = fitText(way.loose.words, 26, wordsLook);
    const width = textWidthMm(words, wordsLook);
    const left =
      along.x < -0.3 ? end.x - width - 0.8 : along.x > 0.3 ? end.x + 0.8 : end.x - width / 2;
    const middle = end.y + (Math.abs(along.x) > 0.3 ? 0 : Math.sign(along.y) * 1.6);
    const box = { x: left, y: middle - 1.2, width, height: 2.4 };
    return [{ wire, words, query, at: { x: left + width / 2, y: middle }, box }];
  });

/** Adds the marks of lines that end before their wires do. */
export function addLooseEnds(sheet: SheetItems, marks: readonly LooseMark[]): void {
  for (const { wire, words, query, at } of marks) {
    const sketch = new Sketch();
    if (query) sketch.circle('free.ring', at.x, at.y, ringMm, { layer: 'numbers' });
    const look = query ? queryLook : wordsLook;
    sketch.text('free.text', words, at.x, at.y, { ...look, layer: 'numbers' });
    sheet.addFigure(`loose-${wire}`, sketch.items, () => sheet.ofWire(wire));
  }
}
