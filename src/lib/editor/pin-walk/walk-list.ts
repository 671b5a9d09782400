// The parts that can be walked, and how far each has come.
import type { Part } from '#document/index.ts';
import { findTubeType, formatPinFunction, type TubeType } from '#handbook/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { countLeads, leadsAtTerminal, type LeadCount } from './leads.ts';
import { stopsOf } from './walk-state.ts';

export interface WalkablePart {
  readonly part: Part;
  /** "6CG7, vertical oscillator". */
  readonly what: string;
  readonly stops: number;
  /** Terminals with a lead, or of which somebody said how many there are. */
  readonly lookedAt: number;
  /** Leads counted and not recorded. */
  readonly unaccounted: number;
}

/** What is walked first: sockets and strips, where most wires end. */
const firstKinds = ['tube', 'picture tube', 'terminal strip', 'plug', 'jack', 'switch', 'control'];

const rank = ({ kind }: Part): number => {
  const at = firstKinds.indexOf(kind);
  return at < 0 ? firstKinds.length : at;
};

/** A resistor or capacitor hangs by its own leads: it is met at the terminals that they are on. */
const hangsByLeads = ({ terminals }: Part): boolean => {
  const own = Object.values(terminals);
  return own.length <= 2 && own.every(({ ending }) => ending === 'lead');
};

const isLookedAt = ({ recorded, counted }: LeadCount): boolean => recorded > 0 || counted !== null;

const natural = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** All parts with terminals to step through, sockets and strips first, by their references. */
export const listWalkable = (study: Study): readonly WalkablePart[] =>
  study.index.parts
    .filter((part) => !hangsByLeads(part) && stopsOf(study, part.id).length > 0)
    .map((part) => {
      const counts = stopsOf(study, part.id).map((stop) => countLeads(study, stop));
      return {
        part,
        what: [part.type ?? part.value ?? part.kind, part.function ?? '']
          .filter(Boolean)
          .join(', '),
        stops: counts.length,
        lookedAt: counts.filter(isLookedAt).length,
        unaccounted: counts.reduce((sum, { unaccounted }) => sum + Math.max(0, unaccounted ?? 0), 0)
      };
    })
    .sort(
      (a, b) => rank(a.part) - rank(b.part) || natural.compare(a.part.reference, b.part.reference)
    );

export interface StopView {
  readonly entry: TerminalEntry;
  readonly name: string;
  readonly count: LeadCount;
  readonly isLookedAt: boolean;
  /** Leads here whose other end is not found. */
  readonly halfTraced: number;
}

/** The terminals of a part with what is known at each. */
export const viewStops = (study: Study, part: string): readonly StopView[] =>
  stopsOf(study, part).map((entry) => {
    const count = countLeads(study, entry);
    const leads = leadsAtTerminal(study, entry.key);
    return {
      entry,
      name: entry.terminal.name || entry.part.reference,
      count,
      isLookedAt: isLookedAt(count),
      halfTraced: leads.filter(({ far }) => !far.isFound).length
    };
  });

const typeOf = ({ kind, type }: Part): TubeType | null =>
  type === undefined || !/tube$/.test(kind) ? null : findTubeType(type);

/** "cathode 1, from memory": what the handbook says of a tube's pin; "" where it says nothing. */
export const pinWords = ({ part, terminal }: TerminalEntry): string => {
  const type = typeOf(part);
  const pin = type?.pinFunctions.find((one) => one.pin === terminal.name);
  if (type === null || pin === undefined) return '';
  const mark = type.pins === 'verified' ? '' : ', from memory';
  return `${formatPinFunction(pin)}${mark}`;
};
