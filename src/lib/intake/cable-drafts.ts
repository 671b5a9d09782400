// Cables of a list: the wires that name the same one share it. Its kind is told by words, its line
// data by its type or the ohms that stand in its name.
import { findCableKind, findCableType, parseColour, type CableKind } from '#handbook/index.ts';
import type { Cable } from '#document/index.ts';
import type { WireDraft } from './wire-draft.ts';

export interface CableDraft {
  readonly name: string;
  /** All that its wires say that may tell its kind. */
  hints: string;
  conductors: number;
}

// The supply stands before the radio frequencies: "B+ to tuner" is no signal.
const signals: readonly (readonly [RegExp, NonNullable<Cable['signal']>])[] = [
  [/\b(?:audio|volume|phono|tone)\b|\ba\.?f\.?(?![a-z])/i, 'audio'],
  [/\b(?:video|contrast)\b/i, 'video'],
  [/\b(?:yoke|deflection|sweep)\b/i, 'deflection'],
  [/\bb ?\+|\b(?:supply|heaters?|line cord|power)\b/i, 'supply'],
  [/\b(?:i\.?f\.?|r\.?f\.?|antenna|tuner)(?![a-z])/i, 'radio frequency']
];

const conductorTail = /^(.{1,300}?), ?([^,]{1,40})$/;

/** "W1, red": a cable's name with the conductor behind it. */
export const splitConductor = (
  text: string
): { readonly name: string; readonly conductor: string | null } => {
  const [, name = text, tail = ''] = conductorTail.exec(text) ?? [];
  const isConductor =
    parseColour(tail) !== null ||
    /^(?:cent(?:er|re)|inner|core|shield|braid|drain|\d{1,2}|(?:first|second|hot|cold)(?: conductor)?)$/i.test(
      tail
    );
  return isConductor ? { name, conductor: tail } : { name: text, conductor: null };
};

/** Adds a wire to the cable that it names. @returns the cable's key */
export const addToCable = (
  cables: Map<string, CableDraft>,
  name: string,
  wire: WireDraft
): string => {
  const key = name.toLowerCase().replace(/\s+/g, ' ');
  const known = cables.get(key) ?? { name, hints: name, conductors: 0 };
  cables.set(key, known);
  known.conductors += 1;
  if (known.hints.length < 2000) {
    const words = [wire.cableHint, wire.construction, wire.conductor, wire.function];
    known.hints += ` ${words.filter(Boolean).join(' ')}`;
  }
  return key;
};

/** What its words tell of a cable. Nothing said: a multi-conductor cable. */
export const describeCable = (
  draft: CableDraft
): Pick<Cable, 'kind' | 'impedanceOhm' | 'velocity' | 'signal'> => {
  const byName = findCableKind(draft.name) ?? findCableKind(draft.hints);
  const isPair = byName === 'shielded wire' && draft.conductors > 2;
  const kind: CableKind = isPair ? 'shielded pair' : (byName ?? 'multi-conductor');
  const ohms = Number(/\b(\d{2,3})[\s-]?(?:ohms?\b|Ω)/i.exec(draft.hints)?.[1] ?? NaN);
  const type = /\brg[\s-]?\d/i.test(draft.hints) ? findCableType(draft.hints) : null;
  const impedanceOhm = Number.isFinite(ohms) ? ohms : (type?.impedanceOhm ?? undefined);
  const signal = signals.find(([pattern]) => pattern.test(draft.hints))?.[1];
  const isLine = kind === 'coax' || kind === 'twin lead';
  return {
    kind,
    ...(isLine && impedanceOhm !== undefined ? { impedanceOhm } : {}),
    ...(isLine && type?.velocity != null ? { velocity: type.velocity } : {}),
    ...(signal === undefined ? {} : { signal })
  };
};
