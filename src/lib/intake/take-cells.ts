// What each column does to the wire of its row. One small reader a column; text that a reader cannot
// use is told with its place and kept.
import {
  findTubeBase,
  findTubeType,
  findWireStyle,
  parseColour,
  unknownColourWords
} from '#handbook/index.ts';
import { terminalEndings } from '#document/index.ts';
import { isBlankCell } from './amount-cells.ts';
import { splitConductor } from './cable-drafts.ts';
import type { Column, ColumnRole } from './columns.ts';
import {
  readColourCell,
  readInsulationCell,
  readRatingCell,
  readWholeConductor,
  type ConductorFields
} from './conductor-cells.ts';
import { readGaugeCell } from './gauge-cells.ts';
import type { TellNote } from './notes.ts';
import { looksLikeTubeType } from './read-end.ts';
import type { EndFields, WireDraft } from './wire-draft.ts';
import { findConstruction, findOrigin, findState, findWay, readCritical } from './wire-words.ts';

export interface Cell {
  readonly column: Column;
  readonly text: string;
}

type Taker = (draft: WireDraft, cell: Cell, tell: TellNote) => void;

/** Keeps a cell that no field takes in the notes, behind its heading. */
export const keepInNotes: Taker = (draft, { column, text }) => {
  draft.notes.push(`${column.heading}: ${text}`);
};

const unread = (draft: WireDraft, { column, text }: Cell, tell: TellNote, why: string): void => {
  draft.notes.push(`${column.heading}: ${text}`);
  const words = `was not read: ${why}; it is kept in the notes`;
  tell('unread', { row: draft.row, column: column.heading, cell: text }, words);
};

const remark = (draft: WireDraft, { column, text }: Cell, tell: TellNote, how: string): void => {
  draft.notes.push(`${column.heading}: ${text}`);
  tell('reading', { row: draft.row, column: column.heading, cell: text }, how);
};

const short = (text: string): string => text.slice(0, 400);

const takeGauge =
  (side: 'found' | 'planned'): Taker =>
  (draft, cell, tell) => {
    if (isBlankCell(cell.text)) return;
    const reading = readGaugeCell(cell.text);
    const fields: ConductorFields = draft[side];
    if (reading.awg !== null) fields.awg = reading.awg;
    if (reading.stranding) fields.stranding = reading.stranding;
    if (reading.plating) fields.plating = reading.plating;
    if (reading.problem !== null) unread(draft, cell, tell, reading.problem);
    else if (reading.remark !== null) remark(draft, cell, tell, reading.remark);
  };

const tellUnknownColour = (
  draft: WireDraft,
  { column, text }: Cell,
  colour: string,
  tell: TellNote
): void => {
  const words = unknownColourWords(colour);
  if (words !== null)
    tell('reading', { row: draft.row, column: column.heading, cell: text }, words);
};

const takeColour =
  (side: 'found' | 'planned'): Taker =>
  (draft, cell, tell) => {
    if (isBlankCell(cell.text)) return;
    // "bare", "braid" in the colour's place say what kind of conductor it is.
    const construction = parseColour(cell.text) ? null : findConstruction(cell.text);
    if (construction && side === 'found') {
      draft.construction ??= construction;
      draft.notes.push(`${cell.column.heading}: ${cell.text}`);
      return;
    }
    if (/^(?:shielded|screened)\b/i.test(cell.text)) {
      draft[side].insulation ??= short(cell.text);
      draft.cableHint += ` ${cell.text}`;
      return;
    }
    const { fields, rest } = readColourCell(cell.text);
    const { insulation, ...colours } = fields;
    Object.assign(draft[side], colours);
    tellUnknownColour(draft, cell, colours.colour ?? '', tell);
    if (insulation !== undefined) draft[side].insulation ??= insulation;
    if (rest !== '') draft.notes.push(`${cell.column.heading}: ${cell.text}`);
  };

const takeTracer =
  (side: 'found' | 'planned'): Taker =>
  (draft, cell, tell) => {
    const { text } = cell;
    if (isBlankCell(text)) return;
    const parsed = parseColour(text);
    draft[side].tracer = parsed && parsed.tracer === null ? parsed.colour : short(text);
    tellUnknownColour(draft, cell, text, tell);
  };

const takeRating =
  (side: 'found' | 'planned'): Taker =>
  (draft, cell, tell) => {
    if (isBlankCell(cell.text)) return;
    const fields = readRatingCell(cell.text);
    if (fields) Object.assign(draft[side], fields);
    else unread(draft, cell, tell, 'a rating is volts, such as 600 V');
  };

const takeInsulation =
  (side: 'found' | 'planned'): Taker =>
  (draft, { text }) => {
    if (isBlankCell(text)) return;
    const { ratingV, ratingKind, ratingC, ...fields } = readInsulationCell(text);
    Object.assign(draft[side], fields);
    if (ratingV === undefined || draft[side].ratingV !== undefined) return;
    Object.assign(draft[side], { ratingV }, ratingKind === undefined ? {} : { ratingKind });
    if (ratingC !== undefined) draft[side].ratingC ??= ratingC;
  };

const takeStyle =
  (side: 'found' | 'planned'): Taker =>
  (draft, { text }) => {
    if (!isBlankCell(text)) draft[side].style = findWireStyle(text)?.name ?? short(text);
  };

const takePlanned: Taker = (draft, cell) => {
  if (isBlankCell(cell.text)) return;
  const way = findWay(cell.text);
  if (way) {
    draft.planned.way = way;
    return;
  }
  const { fields, rest } = readWholeConductor(cell.text);
  for (const [name, value] of Object.entries(fields)) {
    if (!(name in draft.planned)) Object.assign(draft.planned, { [name]: value });
  }
  if (rest !== '') draft.planned.notes = [draft.planned.notes, rest].filter(Boolean).join('; ');
};

const takeType: Taker = (draft, cell) => {
  const { text } = cell;
  if (isBlankCell(text)) return;
  draft.cableHint += ` ${text}`;
  if (findTubeType(text) || looksLikeTubeType(text) || findTubeBase(text)) {
    draft.endType = { text, column: cell.column.heading };
    return;
  }
  const style = findWireStyle(text);
  const construction = findConstruction(text);
  if (style) draft.found.style ??= style.name;
  if (construction) draft.construction = construction;
  const isWholeName = construction === text.toLowerCase();
  if (!isWholeName && !style) keepInNotes(draft, cell, () => undefined);
};

const takeEnding =
  (side: 'from' | 'to'): Taker =>
  (draft, { text }) => {
    // A schedule of ours prints how the terminal is made where nobody recorded the wire's own end.
    const isTerminals = terminalEndings.some((ending) => ending === text.toLowerCase());
    if (!isTerminals && !isBlankCell(text)) draft[side].termination = short(text);
  };

const takeSleeve: Taker = (draft, { text }) => {
  if (isBlankCell(text)) return;
  const [first, second, more] = text.split(', ');
  const isPair = second !== undefined && more === undefined;
  draft.from.sleeve = short(isPair ? (first ?? text) : text);
  draft.to.sleeve = short(isPair ? second : text);
};

const takeEndField =
  (side: 'from' | 'to', field: 'unit' | 'type'): Taker =>
  (draft, { text }) => {
    const end: EndFields = draft[side];
    if (!isBlankCell(text)) end[field] = short(text);
  };

const takeFixed =
  <T>(
    find: (text: string) => T | null,
    set: (draft: WireDraft, value: T) => void,
    what: string
  ): Taker =>
  (draft, cell, tell) => {
    if (isBlankCell(cell.text)) return;
    const value = find(cell.text);
    if (value === null) unread(draft, cell, tell, what);
    else set(draft, value);
  };

const takeText =
  (set: (draft: WireDraft, text: string) => void): Taker =>
  (draft, { text }) => {
    if (!isBlankCell(text)) set(draft, text);
  };

const takeUnit = takeText((draft, text) => {
  // "Main chassis / Tuner" is a wire from the one to the other.
  const [first, second, more] = text.split(' / ');
  const isPair = second !== undefined && more === undefined;
  draft.from.unit ??= short((isPair ? first : text) ?? text);
  draft.to.unit ??= short(isPair ? second : text);
});

const takeTemperature = takeFixed(
  (text) => {
    const celsius = Number(/^(\d{2,3}) ?(?:°|deg)? ?c?$/i.exec(text.trim())?.[1] ?? NaN);
    return Number.isFinite(celsius) ? celsius : null;
  },
  (draft, celsius) => {
    draft.found.ratingC = celsius;
  },
  'a temperature is degrees C, such as 105'
);

// A status column holds states of work, or how the wire looks.
const takeState: Taker = (draft, cell, tell) => {
  if (isBlankCell(cell.text)) return;
  const state = findState(cell.text);
  if (state) draft.state = state;
  else if (draft.found.condition === undefined && !/^\d/.test(cell.text)) {
    draft.found.condition = short(cell.text);
  } else unread(draft, cell, tell, 'found, tagged, removed, fitted or checked is read');
};

/** The reader of each column; ends and amounts are read apart. */
export const takers: Readonly<Partial<Record<ColumnRole, Taker>>> = {
  number: takeText((draft, text) => {
    draft.number = short(text.replace(/^#\s*(?=\w)/, '').replace(/\.0$/, ''));
  }),
  function: takeText((draft, text) => {
    draft.function = short(text);
  }),
  colour: takeColour('found'),
  plannedColour: takeColour('planned'),
  tracer: takeTracer('found'),
  plannedTracer: takeTracer('planned'),
  gauge: takeGauge('found'),
  plannedGauge: takeGauge('planned'),
  rating: takeRating('found'),
  plannedRating: takeRating('planned'),
  ratingC: takeTemperature,
  insulation: takeInsulation('found'),
  plannedInsulation: takeInsulation('planned'),
  style: takeStyle('found'),
  plannedStyle: takeStyle('planned'),
  stranding: takeFixed(
    (text) =>
      /^(?:y(?:es)?$|str)/i.test(text)
        ? 'stranded'
        : /^s(?:ol(?:id)?)?$|^no?$/i.test(text)
          ? 'solid'
          : null,
    (draft, stranding) => {
      draft.found.stranding = stranding as 'solid' | 'stranded';
    },
    'solid or stranded is read'
  ),
  planned: takePlanned,
  way: takeFixed(
    findWay,
    (draft, way) => {
      draft.planned.way = way;
    },
    'new wire, re-sleeve, splice in or keep is read'
  ),
  type: takeType,
  cable: takeText((draft, text) => {
    const { name, conductor } = splitConductor(short(text));
    draft.cable = name;
    draft.conductor ??= conductor;
  }),
  conductor: takeText((draft, text) => {
    draft.conductor = short(text);
  }),
  condition: takeText((draft, text) => {
    draft.found.condition = short(text);
  }),
  state: takeState,
  notes: takeText((draft, text) => {
    draft.notes.push(text);
  }),
  origin: takeFixed(
    findOrigin,
    (draft, origin) => {
      draft.origin = origin;
    },
    'original, earlier repair or modification is read'
  ),
  dress: takeText((draft, text) => {
    draft.dress = text.slice(0, 20_000);
  }),
  sleeve: takeSleeve,
  critical: takeFixed(
    (text) => {
      const marks = readCritical(text);
      return Object.keys(marks).length > 0 ? marks : null;
    },
    (draft, marks) => {
      draft.critical = marks;
    },
    'keep length, keep place or keep short is read'
  ),
  unit: takeUnit,
  fromUnit: takeEndField('from', 'unit'),
  toUnit: takeEndField('to', 'unit'),
  fromType: takeEndField('from', 'type'),
  toType: takeEndField('to', 'type'),
  fromEnding: takeEnding('from'),
  toEnding: takeEnding('to'),
  extra: keepInNotes,
  derived: () => undefined
};
