// Cables of a list: the wires that name the same one share it. Its kind is told by words, its line
// data by its type or the ohms that stand in its name.
import { findCableKind, findCableType, type CableKind } from '#handbook/index.ts';
import type { Cable } from '#document/index.ts';
import type { WireDraft } from './wire-draft.ts';

export interface CableDraft {
  readonly name: string;
  /** All that its wires say that may tell its kind. */
  hints: string;
  conductors: number;
}

const signals: readonly (readonly [RegExp, NonNullable<Cable['signal']>])[] = [
  [/\b(?:audio|volume|phono|tone|a\.?f\.?)\b/i, 'audio'],
  [/\b(?:video|contrast|picture signal)\b/i, 'video'],
  [/\b(?:i\.?f\.?|r\.?f\.?|antenna|ant|tuner)\b/i, 'radio frequency'],
  [/\b(?:yoke|deflection|sweep)\b/i, 'deflection'],
  [/\b(?:b\+|supply|heaters?|line cord|power)/i, 'supply']
];

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
