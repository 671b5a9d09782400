// A document's wires as people keep them in a spreadsheet: words and mixed units, lengths in inches
// and eighths, a tube's type in brackets where it is named first. It holds less than the document.
import type { ChassisDocument, Wire, WireEnd } from '#document/index.ts';
import { findTerminal, sortByOrder, terminalLabel } from '#document/index.ts';

const headings = [
  'No',
  'From',
  'To',
  'Color',
  'Tracer',
  'Gauge',
  'Function',
  'Volts DC',
  'Volts AC',
  'Pulse (peak)',
  'Current',
  'Length (in)',
  'Rating',
  'Cable',
  'Conductor',
  'Kind',
  'Condition',
  'Notes'
];

export const toWireList = (document: ChassisDocument): string => {
  const seen = new Set<string>();
  const rows = sortByOrder(document.wires).map((wire) => rowOf(document, wire, seen));
  return [headings, ...rows].map((cells) => cells.map(toCell).join(',')).join('\r\n') + '\r\n';
};

const rowOf = (document: ChassisDocument, wire: Wire, seen: Set<string>): string[] => {
  const { carries, found } = wire;
  const cable = wire.cable === undefined ? undefined : document.cables[wire.cable];
  return [
    wire.number,
    endWords(document, wire.from, seen),
    endWords(document, wire.to, seen),
    found.colour ?? '',
    found.tracer ?? '',
    found.awg?.toString() ?? '',
    wire.function ?? '',
    carries.dcV?.toString() ?? '',
    carries.acV?.toString() ?? '',
    carries.pulseV === undefined ? '' : withThousands(carries.pulseV),
    carries.amps === undefined ? '' : currentWords(carries.amps),
    wire.tapedMm === undefined ? '' : inEighths(wire.tapedMm),
    found.ratingV === undefined ? '' : withThousands(found.ratingV),
    cable?.name ?? '',
    wire.conductor ?? '',
    wire.construction === 'hook-up wire' ? '' : wire.construction,
    found.condition ?? '',
    [wire.dress, wire.notes, ...unfoundWords(wire)].filter((words) => words !== undefined).join(' ')
  ];
};

const endWords = (document: ChassisDocument, end: WireEnd, seen: Set<string>): string => {
  const found = end.at && findTerminal(document, end.at);
  if (!found) return '?';
  const { part, terminal } = found;
  const label = terminalLabel(part, terminal);
  const isBonded = document.units[part.unit]?.metal === 'bonded';
  if (part.kind === 'ground lug') return isBonded ? 'chassis' : label;
  if (terminal.grounded === true && isBonded) return `chassis at ${label}`;
  if (part.type === undefined || seen.has(part.id)) return label;
  seen.add(part.id);
  return `${part.reference} (${part.type}) ${/^\d/.test(terminal.name) ? 'pin ' : ''}${terminal.name}`;
};

/** What was written down for an end that nobody has found. */
const unfoundWords = ({ from, to }: Wire): string[] =>
  [from, to].flatMap((end) => (end.at || !end.as ? [] : [`Other end: ${end.as}.`]));

const withThousands = (volts: number): string =>
  volts >= 1000 ? `${volts / 1000} kV` : `${volts} V`;

const currentWords = (amps: number): string =>
  amps >= 0.3 ? `${amps} A` : `${Number((amps * 1000).toPrecision(6))} mA`;

/** To the next eighth of an inch above: "3 3/4". */
const inEighths = (mm: number): string => {
  const eighths = Math.ceil((mm / 25.4) * 8 - 1e-9);
  const whole = Math.floor(eighths / 8);
  const rest = eighths % 8;
  if (rest === 0) return String(whole);
  const shared = rest % 4 === 0 ? 4 : rest % 2 === 0 ? 2 : 1;
  return `${whole === 0 ? '' : `${whole} `}${rest / shared}/${8 / shared}`;
};

const toCell = (text: string): string =>
  /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
