// The display list of a laid-out diagram: what is drawn of it, and the sheet around it with legend,
// cautions, notes and title block.
import type { Finding } from '#checks/index.ts';
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Diagram } from './diagram.ts';
import type { DisplayList } from './display-list.ts';
import { DiagramDrawer, jacketed } from './draw-diagram.ts';
import { placeMarks } from './finding-marks.ts';
import { buildCautions } from './sheet/cautions-panel.ts';
import { composeSheet } from './sheet/compose-sheet.ts';
import { buildLegend, type LegendUse } from './sheet/legend.ts';
import { buildNotes } from './sheet/notes-panel.ts';
import type { Panel } from './sheet/panel.ts';
import { buildTitleBlock } from './sheet/title-block.ts';

export interface DisplayOptions {
  readonly findings: readonly Finding[];
  /** Written into the title block as it is given; left out where it is not. */
  readonly date?: string;
  /** Which findings get a mark and a note; dangers and faults where nothing is said. */
  readonly isMarked?: (finding: Finding) => boolean;
  /** With legend, cautions, notes and title block below; the editor shows these elsewhere. */
  readonly withFoot?: boolean;
}

const legendUse = ({ plan, geometry }: Diagram): LegendUse => {
  const { study } = plan;
  const bands = new Set(study.index.wires.map(({ id }) => plan.tagOf(id).band));
  return {
    bands,
    marks: new Set(plan.links.marks.map(({ kind }) => kind)),
    atLeast: study.index.wires.some(({ id }) => plan.tagOf(id).step.startsWith('≥')),
    cables: study.index.wires.some(({ cable }) => {
      const found = cable === undefined ? undefined : findElement(study.document.cables, cable);
      return found !== undefined && jacketed.has(found.kind);
    }),
    mates: geometry.lines.some(({ link }) => link.kind === 'mates' || link.kind === 'trunk'),
    leads: geometry.lines.some(({ link }) => link.kind === 'lead')
  };
};

const isGrave = ({ severity }: Finding): boolean => severity === 'danger' || severity === 'fault';

const componentHosts = ({ plan }: Diagram): Map<Id, Id> =>
  new Map(
    plan.links.marks.flatMap(({ component, part }) =>
      component === undefined ? [] : [[component, part] as const]
    )
  );

/** Columns of notes are no higher than this, mm. */
const highestNotes = 62;

const buildPanels = (
  diagram: Diagram,
  { findings, date }: DisplayOptions,
  isMarked: (finding: Finding) => boolean
): Panel[] => {
  const { study } = diagram.plan;
  const shown = findings.flatMap((finding, index) =>
    isMarked(finding) ? [{ finding, number: index + 1 }] : []
  );
  return [
    ...buildLegend(legendUse(diagram)),
    buildCautions(study.document),
    ...buildNotes(study, findings, shown, highestNotes),
    buildTitleBlock(study.document.identity, study.index.wires.length, date)
  ];
};

/** Everything to paint, in order. Pure: the same diagram and options give the same list. */
export const buildDisplayList = (diagram: Diagram, options: DisplayOptions): DisplayList => {
  const { findings, isMarked = isGrave, withFoot = true } = options;
  const { geometry } = diagram;
  const drawer = new DiagramDrawer(diagram);
  drawer.frames();
  drawer.lines();
  drawer.parts();
  drawer.numbers();
  const { x, y, width } = geometry;
  const height = geometry.height + drawer.loose();
  const places = {
    geometry,
    numbers: drawer.numberBoxes,
    componentHost: componentHosts(diagram)
  };
  drawer.marks(placeMarks(findings, isMarked, places));
  const drawing = { x, y, width, height };
  return composeSheet(
    drawer.items,
    drawing,
    withFoot ? buildPanels(diagram, options, isMarked) : null
  );
};
