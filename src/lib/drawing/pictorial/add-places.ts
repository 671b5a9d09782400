// Units with their names, trays, supports. Each function returns the boxes of text that must stay
// readable.
import { Sketch, type Box } from '../figures/figure.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import { textWidthMm } from '../text-width.ts';
import { boxAround, middleOfBox, spotsOf, widened } from './boxes.ts';
import type { Clutter } from './clutter.ts';
import { drawSupport } from './draw-supports.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import { findPlaceBeside, markBox } from './place-names.ts';
import type { SheetItems, Told } from './sheet-items.ts';

const headingLook = { size: typeSizes.unit, face: 'sans', bold: true } as const;
const insetMm = 3.5;
const supportLook = { size: typeSizes.small, face: 'sans', bold: true } as const;

/** Adds units and trays. */
export function addUnits(sheet: SheetItems, { places, clutter }: PictorialGeometry): Box[] {
  const headings: Box[] = [];
  const addHeading = (
    id: string,
    style: string,
    text: string,
    box: Box,
    told: Told,
    onPlate = false
  ): void => {
    const taken = headingBox(text, box, clutter);
    if (onPlate) {
      const plate = { kind: 'box', ...widened(taken, 1.4), round: 1 } as const;
      sheet.add(`${id}-plate`, 'units', 'photo.plate', plate, told);
    }
    headings.push(taken);
    markBox(taken, clutter);
    const { x, y } = { x: taken.x, y: taken.y + taken.height - 1.6 };
    sheet.add(
      id,
      'units',
      style,
      { kind: 'text', x, y, text, anchor: 'start', ...headingLook },
      told
    );
  };
  const pictured = new Set(places.photos.map(({ photo }) => photo.unit));
  for (const { unit, box } of places.units) {
    const title = unit.size ? unit.name : `${unit.name}, outline not measured`;
    const told = { subject: { kind: 'unit', id: unit.id } as const, title };
    // Over a photo the unit is its outline alone, and its name stands on a plate.
    const isPictured = pictured.has(unit.id);
    const style = isPictured ? 'unit.outline' : 'unit.box';
    sheet.add(`unit-${unit.id}`, 'units', style, { kind: 'box', ...box, round: 2 }, told);
    addHeading(`unit-${unit.id}-name`, 'unit.name', unit.name, box, told, isPictured);
  }
  for (const { id, name, box } of places.trays) {
    const title = `${name}: not placed`;
    sheet.add(`tray-${id}`, 'units', 'tray.box', { kind: 'box', ...box, round: 2 }, { title });
    addHeading(`tray-${id}-name`, 'tray.name', title, box, { title });
  }
  return headings;
}

/** The corner of a unit that the least covers, the upper left one where more are free. */
function headingBox(text: string, box: Box, clutter: Clutter): Box {
  const size = { width: textWidthMm(text, headingLook), height: 6 };
  const [left, right] = [box.x + insetMm, box.x + box.width - insetMm - size.width];
  const [top, bottom] = [box.y + 1.6, box.y + box.height - insetMm - 4.4];
  const corners: Spot[] = [
    { x: left, y: top },
    { x: right, y: top },
    { x: left, y: bottom },
    { x: right, y: bottom }
  ];
  const costs = corners.map((corner) =>
    clutter.costOfBox(middleOfBox({ ...corner, ...size }), size.width + 2, size.height)
  );
  const best = corners[costs.indexOf(Math.min(...costs))];
  return { x: left, y: top, ...best, ...size };
}

/** Adds the marks of all supports. */
export function addSupportMarks(sheet: SheetItems, { places, fits }: PictorialGeometry): void {
  for (const { support, at } of places.supports.values()) {
    const items = drawSupport(support, at, fits.get(support.id) ?? null);
    sheet.addFigure(`support-${support.id}`, items, () => sheet.ofSupport(support));
  }
}

/** Adds the names of all supports beside their marks. */
export function addSupportNames(sheet: SheetItems, geometry: PictorialGeometry): Box[] {
  const { places, fits, clutter } = geometry;
  return [...places.supports.values()].map(({ support, at }) => {
    const marks = drawSupport(support, at, fits.get(support.id) ?? null);
    const around = boxAround(marks.flatMap(({ shape }) => spotsOf(shape)));
    const width = textWidthMm(support.name, supportLook);
    const box = findPlaceBeside(around, width, supportLook.size * 1.2, clutter);
    markBox(box, clutter);
    const sketch = new Sketch();
    const { x, y } = middleOfBox(box);
    sketch.text('support.name', support.name, x, y, supportLook);
    sheet.addFigure(`support-${support.id}-name`, sketch.items, () => sheet.ofSupport(support));
    return box;
  });
}
