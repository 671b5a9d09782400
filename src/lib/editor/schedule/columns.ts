// The columns of the schedule: what each shows, what it holds while it is edited, and how what is
// typed is read. One row of this table a column; the grid knows nothing else of them.
import { wireStates, type Wire } from '#document/index.ts';
import { formatAmps, formatAwg, formatInches, formatMm, formatVolts } from '#quantity/index.ts';
import type { Amount, Study, WireStudy } from '#study/index.ts';
import { unitNamesOf } from '#study/unit-names.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { carriesText, lengthText } from '../core/words.ts';
import * as read from './read-cell.ts';

export const columnIds = [
  'number',
  'from',
  'to',
  'colour',
  'carries',
  'function',
  'unit',
  'cable',
  'gauge',
  'rating',
  'condition',
  'dc',
  'ac',
  'pulse',
  'amps',
  'needs',
  'length',
  'cut',
  'dress',
  'notes',
  'state'
] as const;
export type ColumnId = (typeof columnIds)[number];

/** What a cell is made from. */
export interface RowSource {
  readonly wire: Wire;
  readonly about: WireStudy;
  readonly study: Study;
  readonly lengthUnit: LengthUnit;
}

export interface Column {
  readonly id: ColumnId;
  readonly title: string;
  /** The full name, for a hint and for those who hear the grid. */
  readonly name: string;
  /** Width: the least in characters, and its share of what is left over. */
  readonly least: number;
  readonly grow: number;
  readonly align?: 'end';
  readonly show: (source: RowSource) => string;
  /** The figure was not written on this wire but comes from elsewhere. */
  readonly isDerived?: (source: RowSource) => boolean;
  /** What the field holds when it opens; absent: the cell is not typed into. */
  readonly toEdit?: (source: RowSource) => string;
  readonly read?: (text: string, context: read.ReadContext) => read.CellReading;
  /** An example of what can be typed. */
  readonly example?: string;
  /** What the rows are sorted by, where that is not the text shown; null: not known. */
  readonly sortBy?: (source: RowSource) => number | null;
}

const volts = (amount: Amount | null): string => (amount === null ? '' : formatVolts(amount.value));
const isElsewhere = (amount: Amount | null): boolean =>
  amount !== null && amount.how !== 'declared';

const lengthToEdit = ({ wire, lengthUnit }: RowSource): string => {
  if (wire.tapedMm === undefined) return '';
  const exact = lengthUnit === 'mm' ? formatMm(wire.tapedMm) : `${wire.tapedMm / 25.4} in`;
  // Inches are shown to an eighth; where that is not the whole truth, the field shows the decimal.
  const eighths = (wire.tapedMm / 25.4) * 8;
  return lengthUnit === 'in' && Math.abs(eighths - Math.round(eighths)) < 1e-6
    ? formatInches(wire.tapedMm)
    : exact;
};

const declaredText = ({ wire }: RowSource): string =>
  [
    wire.carries.dcV === undefined ? '' : `${formatVolts(wire.carries.dcV)} dc`,
    wire.carries.acV === undefined ? '' : `${formatVolts(wire.carries.acV)} ac`,
    wire.carries.pulseV === undefined ? '' : `${formatVolts(wire.carries.pulseV)} pulse`,
    wire.carries.amps === undefined ? '' : formatAmps(wire.carries.amps)
  ]
    .filter((part) => part !== '')
    .join(', ');

const endColumn = (end: 'from' | 'to', title: string): Column => ({
  id: end,
  title,
  name: `${title}: which terminal`,
  least: 7,
  grow: 1.7,
  show: ({ wire, study }) => study.index.labelOf(wire[end]),
  toEdit: ({ wire, study }) => {
    const label = study.index.labelOf(wire[end]);
    return label === '?' ? '' : label;
  },
  read: read.readEnd(end),
  example: 'V3-5'
});

const voltColumn = (
  id: 'dc' | 'ac' | 'pulse',
  key: 'dcV' | 'acV' | 'pulseV',
  title: string,
  name: string,
  readText: (text: string) => read.CellReading,
  example: string
): Column => ({
  id,
  title,
  name,
  least: 8,
  grow: 1,
  align: 'end',
  show: ({ about }) => volts(about.carries[key]),
  isDerived: ({ about }) => isElsewhere(about.carries[key]),
  sortBy: ({ about }) => about.carries[key]?.value ?? null,
  toEdit: ({ wire }) => {
    const value = wire.carries[key];
    return value === undefined ? '' : formatVolts(value);
  },
  read: readText,
  example
});

/** All columns, left to right. */
export const columnList: readonly Column[] = [
  {
    id: 'number',
    title: 'No',
    name: 'number on the tag',
    least: 3,
    grow: 0,
    show: ({ wire }) => wire.number,
    toEdit: ({ wire }) => wire.number,
    read: read.readNumber
  },
  endColumn('from', 'From'),
  endColumn('to', 'To'),
  {
    id: 'colour',
    title: 'Colour',
    name: 'colour and tracer found',
    least: 9,
    grow: 1.3,
    show: ({ wire }) => read.colourToEdit(wire),
    toEdit: ({ wire }) => read.colourToEdit(wire),
    read: read.readColour,
    example: 'red/yellow'
  },
  {
    id: 'carries',
    title: 'Carries',
    name: 'what it carries',
    least: 10,
    grow: 2.7,
    show: ({ about }) => carriesText(about.carries) || '?',
    isDerived: ({ about }) =>
      Object.values(about.carries).every((amount) => amount?.how !== 'declared'),
    toEdit: declaredText,
    read: read.readCarries,
    example: '285 V dc, 5 kV pulse, 0.2 A',
    sortBy: ({ about }) => about.stress?.volts ?? null
  },
  {
    id: 'function',
    title: 'Does',
    name: 'what it does',
    least: 12,
    grow: 4,
    show: ({ wire }) => wire.function ?? '',
    toEdit: ({ wire }) => wire.function ?? '',
    read: read.readFunction,
    example: 'screen of V8'
  },
  {
    id: 'unit',
    title: 'Unit',
    name: 'unit that it lies in',
    least: 9,
    grow: 1,
    show: ({ wire, study }) => unitNamesOf(wire, study).join(' / ')
  },
  {
    id: 'cable',
    title: 'Cable',
    name: 'cable that it is a conductor of',
    least: 8,
    grow: 1,
    show: ({ wire, study }) =>
      wire.cable === undefined ? '' : (study.document.cables[wire.cable]?.name ?? '')
  },
  {
    id: 'gauge',
    title: 'Gauge',
    name: 'gauge found',
    least: 8,
    grow: 0.5,
    align: 'end',
    show: ({ wire }) => (wire.found.awg === undefined ? '' : formatAwg(wire.found.awg)),
    toEdit: ({ wire }) => (wire.found.awg === undefined ? '' : formatAwg(wire.found.awg)),
    read: read.readGauge,
    example: '22 AWG',
    sortBy: ({ wire }) => wire.found.awg ?? null
  },
  {
    id: 'rating',
    title: 'Rating',
    name: 'rating of the insulation found',
    least: 8,
    grow: 0.5,
    align: 'end',
    show: ({ about }) =>
      about.foundRating === null
        ? ''
        : `${formatVolts(about.foundRating.volts)}${about.foundRating.kind === 'any' ? '' : ` ${about.foundRating.kind}`}`,
    isDerived: ({ wire }) => wire.found.ratingV === undefined,
    toEdit: ({ wire: { found } }) =>
      found.ratingV === undefined
        ? ''
        : `${formatVolts(found.ratingV)}${found.ratingKind === undefined || found.ratingKind === 'any' ? '' : ` ${found.ratingKind}`}`,
    read: read.readRating,
    example: '600 V',
    sortBy: ({ about }) => about.foundRating?.volts ?? null
  },
  {
    id: 'condition',
    title: 'Condition',
    name: 'condition found',
    least: 9,
    grow: 1.5,
    show: ({ wire }) => wire.found.condition ?? '',
    toEdit: ({ wire }) => wire.found.condition ?? '',
    read: read.readCondition,
    example: 'brittle'
  },
  voltColumn('dc', 'dcV', 'V dc', 'volts dc to chassis', read.readDc, '285 V'),
  voltColumn('ac', 'acV', 'V ac', 'volts ac rms to chassis', read.readAc, '6.3 V'),
  voltColumn('pulse', 'pulseV', 'Pulse', 'volts of pulse, peak', read.readPulse, '5 kV'),
  {
    id: 'amps',
    title: 'Amps',
    name: 'current',
    least: 8,
    grow: 1,
    align: 'end',
    show: ({ about }) => (about.carries.amps === null ? '' : formatAmps(about.carries.amps.value)),
    isDerived: ({ about }) => isElsewhere(about.carries.amps),
    toEdit: ({ wire }) => (wire.carries.amps === undefined ? '' : formatAmps(wire.carries.amps)),
    read: read.readAmps,
    example: '450 mA',
    sortBy: ({ about }) => about.carries.amps?.value ?? null
  },
  {
    id: 'needs',
    title: 'Needs',
    name: 'insulation class that it needs',
    least: 9,
    grow: 0.3,
    show: ({ about: { need } }) =>
      need === null
        ? 'unknown'
        : `${need.atLeast || need.beyondLadder ? '≥' : ''}${formatVolts(need.requiredV)}`,
    sortBy: ({ about: { need } }) => need?.requiredV ?? null
  },
  {
    id: 'length',
    title: 'Length',
    name: 'taped length, lug to lug',
    least: 9,
    grow: 0.5,
    align: 'end',
    show: ({ about, lengthUnit }) =>
      about.length === null ? '' : lengthText(about.length.mm, lengthUnit),
    isDerived: ({ about }) => about.length?.how === 'drawn',
    toEdit: lengthToEdit,
    read: read.readLength,
    example: '240 mm or 9 1/2 in',
    sortBy: ({ about }) => about.length?.mm ?? null
  },
  {
    id: 'cut',
    title: 'Cut',
    name: 'length to cut',
    least: 4.5,
    grow: 0.5,
    align: 'end',
    show: ({ about, lengthUnit }) =>
      about.cut === null
        ? ''
        : lengthUnit === 'mm'
          ? String(Math.round(about.cut.mm))
          : formatInches(about.cut.mm, 'up').replace(/ in$/, ''),
    sortBy: ({ about }) => about.cut?.mm ?? null
  },
  {
    id: 'dress',
    title: 'Dress',
    name: 'lead dress',
    least: 12,
    grow: 3,
    show: ({ wire }) => wire.dress ?? '',
    toEdit: ({ wire }) => wire.dress ?? '',
    read: read.readDress,
    example: 'flat to the chassis'
  },
  {
    id: 'notes',
    title: 'Notes',
    name: 'notes',
    least: 16,
    grow: 6,
    show: ({ wire }) => wire.notes ?? '',
    toEdit: ({ wire }) => wire.notes ?? '',
    read: read.readNotes
  },
  {
    id: 'state',
    title: 'State',
    name: 'state of the work',
    least: 7,
    grow: 0,
    show: ({ wire }) => wire.state,
    // Taken a step at a time by hand; written only where many cells are filled at once.
    toEdit: ({ wire }) => wire.state,
    read: read.readState,
    sortBy: ({ wire }) => wireStates.indexOf(wire.state)
  }
];

const byId = new Map(columnList.map((column) => [column.id, column]));

/** The column of an id. */
export const columnOf = (id: ColumnId): Column => {
  const column = byId.get(id);
  if (column === undefined) throw new Error(`there is no column "${id}"`);
  return column;
};

const isColumnId = (id: string): id is ColumnId => byId.has(id as ColumnId);

/** The ids among `texts` that columns go by, each once. */
export const columnIdsAmong = (texts: readonly string[]): readonly ColumnId[] => [
  ...new Set(texts.filter(isColumnId))
];
