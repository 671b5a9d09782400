// Where a pin walk stands, what can be said on it, and which leads still wait for an answer.
import type { Edit, Id, MakeId } from '#document/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { EndReading } from '../schedule/end-text.ts';
import type { HowKnown } from './lead-edits.ts';
import { leadsAtTerminal, type Lead } from './leads.ts';
import type { NotedLead } from './noted-lead.ts';

export interface Walk {
  readonly part: Id;
  /** The terminal that one stands at. */
  readonly terminal: Id;
  /** Keys of the leads noted here whose far end has not been asked about yet, in turn. */
  readonly open: readonly string[];
  /** How far ends are known: seen with the eye, rung out with a meter, or inferred. */
  readonly how: HowKnown;
  /** The last terminal has been left: what remains is the look back. */
  readonly isDone: boolean;
}

export type WalkEvent =
  /** A lead is seen; with `far` its other end as well. */
  | { readonly kind: 'note'; readonly lead: NotedLead; readonly far?: EndReading | null }
  /** Answers to "where does it go?" for the lead that is asked about. */
  | { readonly kind: 'far-end'; readonly reading: EndReading }
  | { readonly kind: 'is-wire'; readonly wire: Id }
  | { readonly kind: 'splice' }
  | { readonly kind: 'tee'; readonly wire: Id }
  | { readonly kind: 'not-yet' }
  /** Asks about another lead that is here. */
  | { readonly kind: 'ask'; readonly lead: string }
  | { readonly kind: 'tracer'; readonly colour: string }
  /** The value of the part whose lead is asked about. */
  | { readonly kind: 'value'; readonly value: string }
  | { readonly kind: 'remove'; readonly lead: string }
  | { readonly kind: 'count'; readonly leads: number | null }
  | { readonly kind: 'how'; readonly how: HowKnown }
  | { readonly kind: 'go'; readonly terminal: Id }
  /** On to the next terminal; where no lead is noted here, that there is none is written down. */
  | { readonly kind: 'next' }
  | { readonly kind: 'back' };

export interface WalkWorld {
  readonly study: Study;
  readonly makeId: MakeId;
}

export interface WalkStep {
  readonly walk: Walk;
  /** What is to be written down; where it is refused the walk stays where it was. */
  readonly edit: Edit | null;
  readonly words: string | null;
}

/** The terminals of a part in the order of the walk. */
export const stopsOf = (study: Study, part: Id): readonly TerminalEntry[] => {
  const found = study.index.partById.get(part);
  return found === undefined ? [] : (study.index.entriesOf.get(found) ?? []);
};

/** A walk along a part, from its first terminal or a given one; null where it has none. */
export const beginWalk = (
  study: Study,
  part: Id,
  from?: { readonly terminal?: Id; readonly how?: HowKnown }
): Walk | null => {
  const stops = stopsOf(study, part);
  const first = stops.find(({ terminal }) => terminal.id === from?.terminal) ?? stops[0];
  if (first === undefined) return null;
  return { part, terminal: first.terminal.id, open: [], how: from?.how ?? 'seen', isDone: false };
};

/** Where the walk stands; undefined where its terminal has gone from the document. */
export const entryOf = ({ part, terminal }: Walk, study: Study): TerminalEntry | undefined =>
  study.index.terminalByKey.get(terminalKey(part, terminal));

/** The leads that wait for an answer; those that undo took away, or that were found since, do not. */
export const openLeads = (walk: Walk, study: Study): readonly Lead[] => {
  const leads = leadsAtTerminal(study, terminalKey(walk.part, walk.terminal));
  return walk.open.flatMap((key) => leads.filter((lead) => lead.key === key && !lead.far.isFound));
};

/** The lead whose far end is asked for, or null. */
export const askedLead = (walk: Walk, study: Study): Lead | null =>
  openLeads(walk, study)[0] ?? null;
