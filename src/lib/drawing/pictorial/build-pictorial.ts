// The pictorial: the set as it lies on the bench, to scale, with its wires along their supports. The
// one function that the command line and the editor call.
import type { Finding } from '#checks/index.ts';
import type { Study } from '#study/index.ts';
import type { DisplayList } from '../display-list.ts';
import { composeSheet } from '../sheet/compose-sheet.ts';
import { addFindings } from './add-findings.ts';
import { addLooseEnds, listLooseMarks } from './add-loose-ends.ts';
import { addNumbers } from './add-numbers.ts';
import { addPartNames, addParts } from './add-parts.ts';
import { addPhotos } from './add-photos.ts';
import { addSupportMarks, addSupportNames, addUnits } from './add-places.ts';
import { addWires } from './add-wires.ts';
import { buildFoot } from './build-foot.ts';
import { layPictorial, type PictorialGeometry } from './pictorial-geometry.ts';
import { markBox } from './place-names.ts';
import { SheetItems } from './sheet-items.ts';
import type { Face } from './sheet-places.ts';

export interface PictorialOptions {
  readonly findings: readonly Finding[];
  /** Which side of the chassis is seen; from above, right and left trade places. From below if left out. */
  readonly face?: Face;
  /** Each wire's length beside its number, where it is known. */
  readonly withLengths?: boolean;
  /** Written into the title block as it is given; left out where it is not. */
  readonly date?: string;
  /** Which findings get a mark and a note; dangers and faults where nothing is said. */
  readonly isMarked?: (finding: Finding) => boolean;
  /** With legend, cautions, notes and title block below; the editor shows these elsewhere. */
  readonly withFoot?: boolean;
}

const isGrave = ({ severity }: Finding): boolean => severity === 'danger' || severity === 'fault';

/** Everything to paint, in order, one millimetre of the set being one millimetre of the sheet. Pure:
 *  the same study and options give the same list. Every wire of the study is drawn from end to end,
 *  or drawn as a stub, or named in the list of wires that are not drawn. */
export function buildPictorial(study: Study, options: PictorialOptions): DisplayList {
  return drawPictorial(study, layPictorial(study, options.face ?? 'below'), options);
}

/** Draws what was laid for the same study and face. */
export function drawPictorial(
  study: Study,
  geometry: PictorialGeometry,
  options: PictorialOptions
): DisplayList {
  const { findings, face = 'below', isMarked = isGrave, withFoot = true, date } = options;
  const { lines, places, clutter } = geometry;
  const sheet = new SheetItems(study);
  addPhotos(sheet, geometry);
  const headings = addUnits(sheet, geometry);
  addSupportMarks(sheet, geometry);
  const parts = addParts(sheet, study, geometry);
  const loose = listLooseMarks(lines);
  for (const { box } of loose) markBox(box, clutter);
  const names = [...addPartNames(sheet, study, geometry), ...addSupportNames(sheet, geometry)];
  addWires(
    sheet,
    study,
    lines,
    places.units.map(({ box }) => box)
  );
  addLooseEnds(sheet, loose);
  const blocked = [...headings, ...names, ...loose.map(({ box }) => box)];
  const numbers = addNumbers(sheet, study, geometry, blocked, options.withLengths ?? false);
  addFindings(sheet, geometry, findings, isMarked, { numbers, parts });
  const panels = withFoot ? buildFoot(study, geometry, { findings, isMarked, face, date }) : null;
  return composeSheet(sheet.items, sheet.box(), panels);
}
