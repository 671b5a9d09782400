// The bench list: socket by socket, for dirty hands and a pencil. Twenty lines a page at the most, each
// with three boxes, and ten blank rows at the end for what nobody had seen.
import type { Part, Wire } from '#document/index.ts';
import { colourWords, leadsAt, type Plan } from '#plan/index.ts';
import { formatInches, formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { offerWords } from './plan-sheets.ts';
import { heading, table, warning, type Block, type Cell, type Sheet } from './sheet.ts';

const linesAPage = 20;
const blankRows = 10;

/** The shares of the width are those of each table, so that the columns stand under each other. */
const columns = [
  { heading: 'No', share: 6 },
  { heading: 'From (leads)', share: 11.5 },
  { heading: 'To (leads)', share: 11.5 },
  { heading: 'Colour', share: 10 },
  { heading: 'New wire, cut', share: 17 },
  { heading: 'Strip, sleeve', share: 10.5 },
  { heading: 'Dress', share: 12 },
  { heading: 'Out', share: 6, isBlank: true },
  { heading: 'In', share: 5, isBlank: true },
  { heading: 'Checked', share: 10.5, isBlank: true }
];

/** The wires socket by socket, as they are gone through: on paper and on screen the same. */
export function benchGroups(
  study: Study
): readonly { readonly name: string; readonly wires: readonly Wire[] }[] {
  const groups = new Map<Part | null, Wire[]>();
  for (const wire of study.index.wires) {
    const socket = socketOf(study, wire);
    groups.set(socket, [...(groups.get(socket) ?? []), wire]);
  }
  return [...groups].map(([part, wires]) => ({
    name: part
      ? [part.reference, part.type, part.function].filter(Boolean).join(', ')
      : 'Elsewhere',
    wires
  }));
}

/** What has to be known of a wire with the iron in hand. */
export interface BenchLine {
  readonly number: string;
  /** With how many leads share the lug. */
  readonly from: string;
  readonly to: string;
  readonly colour: string | null;
  readonly newWire: string;
  readonly cut: string | null;
  readonly strip: string | null;
  readonly dress: string | null;
}

export function benchList(study: Study, plan: Plan): Sheet {
  const blocks: Block[] = [
    warning(
      'Discharge first: plug pulled, picture tube and filters discharged, clip left on, measured.'
    )
  ];
  let onPage = 0;
  for (const { name, wires } of benchGroups(study)) {
    for (let at = 0; at < wires.length; at += linesAPage) {
      const own = wires.slice(at, at + linesAPage);
      if (onPage > 0 && onPage + own.length > linesAPage) {
        blocks.push({ kind: 'page' });
        onPage = 0;
      }
      onPage += own.length;
      blocks.push(heading(at === 0 ? name : `${name}, more`));
      blocks.push(
        table(
          columns,
          own.map((wire) => rowOf(study, plan, wire))
        )
      );
    }
  }
  blocks.push({ kind: 'page' }, heading('Found besides'));
  blocks.push(
    table(
      columns.map((column) => ({ ...column, isBlank: true })),
      Array.from({ length: blankRows }, () => [])
    )
  );
  return { title: 'Bench list', isLarge: true, blocks };
}

function socketOf(study: Study, wire: Wire): Part | null {
  const ends = [wire.from, wire.to].flatMap((end) => study.index.findAt(end) ?? []);
  return ends.find(({ part }) => part.kind === 'tube')?.part ?? ends[0]?.part ?? null;
}

/** Both columns of figures as they are read off a tape: mm, and inches to an eighth. */
export function benchLine(study: Study, plan: Plan, wire: Wire): BenchLine {
  const about = study.wires.get(wire.id);
  const own = plan.byWire.get(wire.id);
  const endText = (end: Wire['from']): string => {
    const at = study.index.findAt(end);
    const label = study.index.labelOf(end);
    return at ? `${label} (${leadsAt(study, at)})` : label;
  };
  const cut = own?.cutMm ?? null;
  const strips = about?.cut
    ? `${Math.ceil(about.cut.stripFromMm)}, ${Math.ceil(about.cut.stripToMm)} mm`
    : null;
  const sleeves = [...new Set([wire.from.sleeve, wire.to.sleeve])].filter(
    (text) => text !== undefined
  );
  return {
    number: wire.number || 'none',
    from: endText(wire.from),
    to: endText(wire.to),
    colour:
      wire.found.colour === undefined
        ? null
        : colourWords({ colour: wire.found.colour, tracer: wire.found.tracer ?? null }),
    newWire:
      own?.way === 'keep'
        ? 'keep'
        : own?.by === 'done'
          ? 'done'
          : ((own && offerWords(own)) ?? own?.way ?? ''),
    cut: cut === null ? null : `cut ${formatMm(cut)}, ${formatInches(cut, 'up')}`,
    strip: [strips, ...sleeves].filter(Boolean).join('; ') || null,
    dress:
      [wire.dress, ...(own?.notes ?? []).filter((note) => note !== wire.dress)]
        .filter(Boolean)
        .join('; ') || null
  };
}

function rowOf(study: Study, plan: Plan, wire: Wire): readonly Cell[] {
  const line = benchLine(study, plan, wire);
  const box = (isTicked: boolean): Cell => (isTicked ? '✓' : null);
  const { state } = wire;
  return [
    line.number,
    line.from,
    line.to,
    line.colour,
    [line.newWire, line.cut].filter(Boolean).join('; '),
    line.strip,
    line.dress,
    box(state === 'removed' || state === 'fitted' || state === 'checked'),
    box(state === 'fitted' || state === 'checked'),
    box(state === 'checked')
  ];
}
