// The one field of a walk: what a line means depends on what is being asked. Nothing written at all says
// "not yet" to a question, and otherwise "on to the next".
import type { Part } from '#document/index.ts';
import { readBands } from '#handbook/resistor-bands.ts';
import { parseQuantity } from '#quantity/index.ts';
import type { EndNames, EndReading } from '../schedule/end-text.ts';
import { leadName } from './lead-words.ts';
import type { Lead } from './leads.ts';
import { readLead } from './read-lead.ts';
import type { WalkEvent } from './walk-state.ts';

export type LineReading =
  | { readonly ok: true; readonly event: WalkEvent; readonly understood: string }
  | { readonly ok: false; readonly why: string };

export interface LineWorld {
  /** The part that is walked. */
  readonly part: Part;
  /** The lead whose far end is asked for. */
  readonly asked: Lead | null;
  readonly ends: EndNames;
}

const splice = /^(?:to )?(?:an? )?(?:splice|joint)(?: in the air)?$/i;
const notYet = /^(?:\?|not yet|later)$/i;

/** Ends as they are written at a part: its own terminals by their names alone. */
export const endsFrom = (part: Part, ends: EndNames): Pick<EndNames, 'read' | 'suggest'> => {
  const own = new Map(
    Object.values(part.terminals).map((one) => [one.name.toLowerCase(), one] as const)
  );
  return {
    suggest: (text, limit) => ends.suggest(text, limit),
    read: (text) => {
      const name = text
        .trim()
        .toLowerCase()
        .replace(/^(?:pin|lug|terminal) /, '');
      const terminal = name === '' ? undefined : own.get(name);
      if (terminal === undefined) return ends.read(text);
      const label = `${part.reference}-${terminal.name}`;
      return { kind: 'terminal', at: { part: part.id, terminal: terminal.id }, label };
    }
  };
};

const far = (reading: EndReading, asked: Lead): LineReading => ({
  ok: true,
  event: { kind: 'far-end', reading },
  understood:
    reading.kind === 'terminal'
      ? `${leadName(asked)} to ${reading.label}`
      : reading.kind === 'words'
        ? `${leadName(asked)}: "${reading.text}" as written, ${reading.why}`
        : `${leadName(asked)}: other end not yet`
});

/** The value that a line gives to a resistor or capacitor; null where it is none. */
const valueIn = (text: string, lead: Lead): string | null => {
  if (lead.kind !== 'part') return null;
  const { kind } = lead.part;
  if (kind !== 'resistor' && kind !== 'capacitor') return null;
  const bands = kind === 'resistor' ? readBands(text) : null;
  if (bands !== null) return bands.text;
  const dimension = kind === 'resistor' ? 'resistance' : 'capacitance';
  return /^[\d.]/.test(text) && parseQuantity(text, dimension).ok ? text : null;
};

const readAnswer = (text: string, asked: Lead, { part, ends }: LineWorld): LineReading => {
  if (notYet.test(text)) return far({ kind: 'open' }, asked);
  if (splice.test(text)) {
    const understood = `${leadName(asked)} to a splice in the air`;
    return { ok: true, event: { kind: 'splice' }, understood };
  }
  const reading = endsFrom(part, ends).read(text);
  const value = reading.kind === 'words' ? valueIn(text, asked) : null;
  if (value !== null) {
    return {
      ok: true,
      event: { kind: 'value', value },
      understood: `${leadName(asked)} of ${value}`
    };
  }
  if (reading.kind !== 'words') return far(reading, asked);
  // Another lead that is here may be written down while one still waits.
  const another = readLead(text, endsFrom(part, ends));
  if (!another.ok) return far(reading, asked);
  return {
    ok: true,
    event: { kind: 'note', lead: another.lead, far: another.far },
    understood: another.understood
  };
};

export const readWalkLine = (line: string, world: LineWorld): LineReading => {
  const text = line.trim().replaceAll(/\s+/g, ' ');
  const { asked, part, ends } = world;
  if (text === '') {
    return asked === null
      ? { ok: true, event: { kind: 'next' }, understood: 'on to the next terminal' }
      : far({ kind: 'open' }, asked);
  }
  if (asked !== null) return readAnswer(text, asked, world);
  const reading = readLead(text, endsFrom(part, ends));
  if (!reading.ok) return reading;
  const { lead, far: end, understood } = reading;
  return { ok: true, event: { kind: 'note', lead, far: end }, understood };
};

/** Terminals whose names begin as the end of the line does, and the line with each in its place. */
export const completeWalkLine = (
  line: string,
  world: LineWorld,
  limit = 6
): readonly { readonly label: string; readonly line: string }[] => {
  const words = line.trim().split(/\s+/).filter(Boolean);
  for (let from = 0; from < words.length; from++) {
    const tail = words.slice(from).join(' ');
    const head = words.slice(0, from).join(' ');
    const labels = world.ends.suggest(tail, limit);
    // A colour alone is a lead, not the start of a terminal's name, unless an end is asked for.
    const isLead = from === 0 && world.asked === null && readLead(tail, world.ends).ok;
    if (labels.length === 0 || isLead) continue;
    return labels.map((label) => ({ label, line: head === '' ? label : `${head} ${label}` }));
  }
  return [];
};
