// Wires as lines in the style of their class, the lighter ones first: each clears a gap where it
// crosses those below it, so that the eye can follow. A line that ends before its wire says so.
import type { ItemList } from '../items.ts';
import type { Box } from '../figures/figure.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import { roundMm, type Spot } from '../presentation/sides.ts';
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { classBandOf, type ClassBand, type Study } from '#study/index.ts';
import { bandLines } from '../styles.ts';
import { findCrossingGaps } from './crossing-gaps.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import type { WireLine } from './pictorial-geometry.ts';
import { wireTitle } from '../wire-title.ts';
import { minus, plus, times, unitOf } from './vectors.ts';

const ringMm = 1.7;
const wordsLook = { size: typeSizes.small, face: 'sans' } as const;
const queryLook = { size: typeSizes.number, face: 'sans', bold: true } as const;

const pointsOf = (line: readonly Spot[]): number[] =>
  line.flatMap(({ x, y }) => [roundMm(x), roundMm(y)]);

/** Where a stub's ring stands, beyond the end of its line, and its words beside it. */
export interface LooseMark {
  readonly wire: string;
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

/** Adds all wires. `units` are the boxes within which a gap has the paper's colour. */
export function addWires(
  list: ItemList,
  study: Study,
  lines: readonly WireLine[],
  units: readonly Box[]
): void {
  const bandOf = (wire: Id): ClassBand =>
    classBandOf(study.wires.get(wire)?.need?.requiredV ?? null);
  const heaviestLast = lines.toSorted(
    (a, b) => paintRank(bandOf(a.wire)) - paintRank(bandOf(b.wire))
  );
  const gaps = findCrossingGaps(
    heaviestLast.map(({ wire, line }) => ({ line, widthMm: bandLines[bandOf(wire)].width }))
  );
  addJackets(list, study, lines);
  heaviestLast.forEach(({ wire: id, line }, index) => {
    if (line.length < 2) return;
    const band = bandOf(id);
    const subject = { kind: 'wire', id } as const;
    (gaps[index] ?? []).forEach((gap, n) => {
      const [middle] = gap;
      if (!middle || !units.some((box) => isInside(middle, box))) return;
      const shape = { kind: 'line', points: pointsOf(gap) } as const;
      list.add(`wire-${id}-gap-${n}`, 'wires', `wire.${band}.gap`, shape);
    });
    const shape = { kind: 'line', points: pointsOf(line) } as const;
    if (band === '20k+') list.add(`wire-${id}-halo`, 'wires', 'wire.20k+.halo', shape, { subject });
    list.add(`wire-${id}`, 'wires', `wire.${band}`, shape, {
      subject,
      title: wireTitle(study, id)
    });
  });
}

/** The jackets of cables, below their wires: beside each other they run into one. */
function addJackets(list: ItemList, study: Study, lines: readonly WireLine[]): void {
  for (const [style, name] of [
    ['cable.casing.edge', 'jacket-edge'],
    ['cable.casing', 'jacket']
  ] as const) {
    for (const { wire, jacket } of lines) {
      const id = findElement(study.document.wires, wire)?.cable;
      const cable = id === undefined ? undefined : findElement(study.document.cables, id);
      if (!cable || jacket.length < 2) continue;
      const more = { subject: { kind: 'cable', id: cable.id } as const, title: cable.name };
      const shape = { kind: 'line', points: pointsOf(jacket) } as const;
      list.add(`wire-${wire}-${name}`, 'wires', style, shape, more);
    }
  }
}

/** Heavier wires are painted later, so that they lie on top; what is not known above the plainest. */
const paintRank = (band: ClassBand): number =>
  ['300', '600', 'not known', '1k-3k', '5k-15k', '20k+'].indexOf(band);

const isInside = ({ x, y }: Spot, box: Box): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

/** Adds the marks of lines that end before their wires do. */
export function addLooseMarks(list: ItemList, study: Study, marks: readonly LooseMark[]): void {
  for (const { wire, words, query, at } of marks) {
    const subject = { kind: 'wire', id: wire } as const;
    const more = { subject, title: wireTitle(study, wire) };
    if (query) {
      const ring = { kind: 'circle', x: roundMm(at.x), y: roundMm(at.y), r: ringMm } as const;
      list.add(`wire-${wire}-loose`, 'numbers', 'free.ring', ring, more);
    }
    const look = query ? queryLook : wordsLook;
    list.add(
      `wire-${wire}-loose-words`,
      'numbers',
      'free.text',
      {
        kind: 'text',
        x: roundMm(at.x),
        y: roundMm(at.y + look.size * 0.35),
        text: words,
        anchor: 'middle',
        ...look
      },
      more
    );
  }
}
