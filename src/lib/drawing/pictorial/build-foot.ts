// The foot of the pictorial's sheet: the panels that every drawing has, and what this one cannot show.
import type { Finding } from '#checks/index.ts';
import { classBandOf, type Study } from '#study/index.ts';
import { buildCautions } from '../sheet/cautions-panel.ts';
import { buildLegend } from '../sheet/legend.ts';
import { buildNotes } from '../sheet/notes-panel.ts';
import type { Panel } from '../sheet/panel.ts';
import { buildTitleBlock } from '../sheet/title-block.ts';
import { buildNotDrawn } from './not-drawn-panel.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import type { Face } from './sheet-places.ts';

export interface FootOptions {
  readonly findings: readonly Finding[];
  readonly isMarked: (finding: Finding) => boolean;
  readonly face: Face;
  readonly date: string | undefined;
}

const highestNotes = 62;

const wordsFor: Readonly<Record<Face, string>> = {
  below: 'Pictorial, seen from below, 1 mm of the set is 1 mm here',
  above: 'Pictorial, seen from above, 1 mm of the set is 1 mm here'
};

/** The panels in their order, the title block last. */
export function buildFoot(
  study: Study,
  geometry: PictorialGeometry,
  options: FootOptions
): Panel[] {
  const { findings, isMarked, date, face } = options;
  const shown = findings.flatMap((finding, index) =>
    isMarked(finding) ? [{ finding, number: index + 1 }] : []
  );
  const needs = [...study.wires.values()].map(({ need }) => need);
  const legend = buildLegend({
    bands: new Set(needs.map((need) => classBandOf(need?.requiredV ?? null))),
    marks: new Set(
      geometry.lines.some(({ way }) => way.loose?.why === 'not found') ? ['free'] : []
    ),
    atLeast: needs.some((need) => need !== null && (need.atLeast || need.beyondLadder)),
    cables: geometry.lines.some(({ jacket }) => jacket.length > 1),
    mates: false,
    leads: geometry.bodies.length > 0 || geometry.partLeads.length > 0,
    supports: new Set([...geometry.places.supports.values()].map(({ support }) => support.kind))
  });
  return [
    ...legend,
    buildCautions(study.document),
    ...buildNotDrawn(study, geometry.notDrawn),
    ...buildNotes(study, findings, shown, highestNotes),
    buildTitleBlock(study.document.identity, study.index.wires.length, date, wordsFor[face])
  ];
}
