// Wires as lines in the style of their class, the lighter ones first: each clears a gap where it
// crosses those below it, so that the eye can follow. Cables lie under their jackets.
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { classBandOf, type ClassBand, type Study } from '#study/index.ts';
import type { Box } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { bandLines } from '../styles.ts';
import { findCrossingGaps } from './crossing-gaps.ts';
import type { WireLine } from './pictorial-geometry.ts';
import type { SheetItems } from './sheet-items.ts';
import { distanceToPiece, middleOf } from './vectors.ts';

const pointsOf = (line: readonly Spot[]): number[] => line.flatMap(({ x, y }) => [x, y]);

/** Adds all wires. `units` are the boxes within which a gap has the paper's colour. */
export function addWires(
  sheet: SheetItems,
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
  addJackets(sheet, study, lines);
  heaviestLast.forEach(({ wire: id, line, jacket }, index) => {
    if (line.length < 2) return;
    const band = bandOf(id);
    (gaps[index] ?? []).forEach((gap, n) => {
      const [from, to] = gap;
      const at = from && to && middleOf(from, to);
      if (!at || !units.some((box) => isInside(at, box))) return;
      const shape = { kind: 'line', points: pointsOf(gap) } as const;
      const style = isOn(at, jacket) ? 'cable.casing' : `wire.${band}.gap`;
      sheet.add(`wire-${id}-gap-${n}`, 'wires', style, shape);
    });
    const shape = { kind: 'line', points: pointsOf(line) } as const;
    const told = sheet.ofWire(id);
    if (band === '20k+') sheet.add(`wire-${id}-halo`, 'wires', 'wire.20k+.halo', shape, told);
    sheet.add(`wire-${id}`, 'wires', `wire.${band}`, shape, told);
  });
}

/** The jackets of cables, below their wires: beside each other they run into one. */
function addJackets(sheet: SheetItems, study: Study, lines: readonly WireLine[]): void {
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
      sheet.add(`wire-${wire}-${name}`, 'wires', style, shape, more);
    }
  }
}

/** Heavier wires are painted later, so that they lie on top; what is not known above the plainest. */
const paintRank = (band: ClassBand): number =>
  ['300', '600', 'not known', '1k-3k', '5k-15k', '20k+'].indexOf(band);

const isOn = (at: Spot, line: readonly Spot[]): boolean =>
  line.some((to, n) => distanceToPiece(at, line[n - 1] ?? to, to) < 0.3);

const isInside = ({ x, y }: Spot, box: Box): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
