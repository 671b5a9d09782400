// The numbered marks that tie the notes to their places on the pictorial.
import type { Finding } from '#checks/index.ts';
import type { Id } from '#document/index.ts';
import { Sketch, type Box } from '../figures/figure.ts';
import { markRadius, stackMarks } from '../finding-marks.ts';
import type { Spot } from '../presentation/sides.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import type { SheetItems } from './sheet-items.ts';

export interface MarkedPlaces {
  /** The main number of each wire. */
  readonly numbers: ReadonlyMap<Id, Box>;
  readonly parts: ReadonlyMap<Id, Box>;
}

/** Where a finding's mark stands: beside the number, the terminal or the part that it is about. */
function findSpot(
  finding: Finding,
  geometry: PictorialGeometry,
  places: MarkedPlaces
): Spot | null {
  for (const { kind, id } of finding.at) {
    const number = kind === 'wire' ? places.numbers.get(id) : undefined;
    if (number) return { x: number.x + number.width + 0.6, y: number.y - 0.9 };
    const terminal = kind === 'terminal' ? geometry.spots.get(id)?.at : undefined;
    if (terminal) return { x: terminal.x + 2.4, y: terminal.y - 2.4 };
    const part = places.parts.get(
      kind === 'part' ? id : kind === 'terminal' ? (id.split('/')[0] ?? '') : ''
    );
    if (part) return { x: part.x + 1.5, y: part.y + 1.5 };
    const unit =
      kind === 'unit' ? geometry.places.units.find((one) => one.unit.id === id) : undefined;
    if (unit) return { x: unit.box.x + unit.box.width - 4, y: unit.box.y + 4 };
  }
  return null;
}

/** Adds a mark for every finding that is to have one. */
export function addFindings(
  sheet: SheetItems,
  geometry: PictorialGeometry,
  findings: readonly Finding[],
  isMarked: (finding: Finding) => boolean,
  places: MarkedPlaces
): void {
  const spotOf = (finding: Finding): Spot | null => findSpot(finding, geometry, places);
  for (const { number, finding, at } of stackMarks(findings, isMarked, spotOf)) {
    const style = `finding.${finding.severity}`;
    const sketch = new Sketch();
    sketch.circle(`${style}.disc`, at.x, at.y, markRadius, { layer: 'findings' });
    sketch.text(`${style}.text`, String(number), at.x, at.y, {
      size: number > 99 ? 1.7 : 2.2,
      bold: true,
      layer: 'findings'
    });
    const told = {
      subject: { kind: 'finding', id: String(number - 1) } as const,
      title: `${finding.severity}: ${finding.message}`
    };
    sheet.addFigure(`finding-${number}`, sketch.items, () => told);
  }
}
