// From a wire's draft to a wire of the document.
import { type Cable, type TerminalRef, type Wire, type WireEnd } from '#document/index.ts';
import type { EndFields, WireDraft } from './wire-draft.ts';

export interface WirePlace {
  readonly id: string;
  readonly order: string;
  readonly from: TerminalRef | null;
  readonly to: TerminalRef | null;
  readonly cable: Cable | null;
}

const short = (text: string): string => text.slice(0, 400);

const buildEnd = (
  { end, termination, stripMm, sleeve }: EndFields,
  at: TerminalRef | null
): WireEnd => {
  const isBare = end.kind === 'terminal' && end.terminal === null;
  const isDoubtful = end.kind === 'terminal' && (end.isUncertain || isBare);
  const keepsText = !at || isDoubtful || (end.kind === 'terminal' && end.hasMore);
  return {
    ...(at ? { at: { part: at.part, terminal: at.terminal } } : {}),
    known: !at ? 'unknown' : isDoubtful ? 'inferred' : 'seen',
    ...(keepsText && end.text !== '' ? { as: short(end.text) } : {}),
    ...(termination === undefined ? {} : { termination }),
    ...(stripMm === undefined ? {} : { stripMm }),
    ...(sleeve === undefined ? {} : { sleeve })
  };
};

const constructionOf = ({ construction }: WireDraft, cable: Cable | null): string => {
  if (construction !== null) return construction;
  return cable?.kind === 'coax' || cable?.kind === 'twin lead' ? cable.kind : 'hook-up wire';
};

/** The wire of a draft at its place; nothing that its row said is left out. */
export const buildWire = (draft: WireDraft, place: WirePlace): Wire => ({
  id: place.id,
  order: place.order,
  number: draft.number,
  from: buildEnd(draft.from, place.from),
  to: buildEnd(draft.to, place.to),
  construction: constructionOf(draft, place.cable),
  ...(draft.function === null ? {} : { function: draft.function }),
  ...(place.cable ? { cable: place.cable.id } : {}),
  ...(draft.conductor === null ? {} : { conductor: draft.conductor }),
  carries: { ...draft.carries },
  ...(draft.origin === null ? {} : { origin: draft.origin }),
  found: { ...draft.found },
  planned: { ...draft.planned },
  ...(draft.tapedMm === null ? {} : { tapedMm: draft.tapedMm }),
  ...(draft.critical === null ? {} : { critical: draft.critical }),
  ...(draft.dress === null ? {} : { dress: draft.dress }),
  state: draft.state,
  ...(draft.notes.length === 0 ? {} : { notes: draft.notes.join('; ').slice(0, 20_000) })
});
