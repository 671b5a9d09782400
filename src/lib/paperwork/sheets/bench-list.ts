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

const columns = [
  { heading: 'No' },
  { heading: 'From (leads)' },
  { heading: 'To (leads)' },
  { heading: 'Colour' },
  { heading: 'New wire, cut' },
  { heading: 'Strip, sleeve' },
  { heading: 'Dress' },
  { heading: 'Out', isBlank: true },
  { heading: 'In', isBlank: true },
  { heading: 'Checked', isBlank: true }
];

export function benchList(study: Study, plan: Plan): Sheet {
  const groups = new Map<Part | null, Wire[]>();
  for (const wire of study.index.wires) {
    const socket = socketOf(study, wire);
    groups.set(socket, [...(groups.get(socket) ?? []), wire]);
  }
  const blocks: Block[] = [
    warning(
      'Discharge first: plug pulled, picture tube and filters discharged, clip left on, measured.'
    )
  ];
  let onPage = 0;
  for (const [part, wires] of groups) {
    for (let at = 0; at < wires.length; at += linesAPage) {
      const own = wires.slice(at, at + linesAPage);
      if (onPage > 0 && onPage + own.length > linesAPage) {
        blocks.push({ kind: 'page' });
        onPage = 0;
      }
      onPage += own.length;
      const name = part
        ? [part.reference, part.type, part.function].filter(Boolean).join(', ')
        : 'Elsewhere';
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
      columns.map(({ heading: text }) => ({ heading: text, isBlank: true })),
      Array.from({ length: blankRows }, () => [])
    )
  );
  return { title: 'Bench list', isLarge: true, blocks };
}

function socketOf(study: Study, wire: Wire): Part | null {
  const ends = [wire.from, wire.to].flatMap((end) => study.index.findAt(end) ?? []);
  return ends.find(({ part }) => part.kind === 'tube')?.part ?? ends[0]?.part ?? null;
}

function rowOf(study: Study, plan: Plan, wire: Wire): readonly Cell[] {
  const about = study.wires.get(wire.id);
  const own = plan.byWire.get(wire.id);
  const endText = (end: Wire['from']): string => {
    const at = study.index.findAt(end);
    const label = study.index.labelOf(end);
    return at ? `${label} (${leadsAt(study, at)})` : label;
  };
  const cut = own?.cutMm ?? null;
  const cutText = cut === null ? null : `cut ${formatMm(cut)}, ${formatInches(cut, 'up')}`;
  const newWire =
    own?.way === 'keep'
      ? 'keep'
      : own?.by === 'done'
        ? 'done'
        : ((own && offerWords(own)) ?? own?.way);
  const strips = about?.cut
    ? `${Math.ceil(about.cut.stripFromMm)} and ${Math.ceil(about.cut.stripToMm)} mm`
    : null;
  const sleeves = [...new Set([wire.from.sleeve, wire.to.sleeve])].filter(
    (text) => text !== undefined
  );
  const box = (isTicked: boolean): Cell => (isTicked ? 'done' : null);
  const { state } = wire;
  return [
    wire.number || 'none',
    endText(wire.from),
    endText(wire.to),
    wire.found.colour === undefined
      ? null
      : colourWords({ colour: wire.found.colour, tracer: wire.found.tracer ?? null }),
    [newWire, cutText].filter(Boolean).join('; '),
    [strips, ...sleeves].filter(Boolean).join('; ') || null,
    [wire.dress, ...(own?.notes ?? []).filter((note) => note !== wire.dress)]
      .filter(Boolean)
      .join('; ') || null,
    box(state === 'removed' || state === 'fitted' || state === 'checked'),
    box(state === 'fitted' || state === 'checked'),
    box(state === 'checked')
  ];
}
