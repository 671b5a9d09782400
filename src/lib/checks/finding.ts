// What the validator says of one place, and the shape of a rule that says it.
import type { Edit } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Piece } from './pieces.ts';

/** Worst first. */
export const severities = ['danger', 'fault', 'caution', 'note'] as const;
export type Severity = (typeof severities)[number];

export interface FindingPlace {
  readonly kind: 'wire' | 'part' | 'terminal' | 'cable' | 'unit' | 'net' | 'document';
  readonly id: string;
  /** For people: "wire 60", "V3-5". */
  readonly label: string;
}

/** How one finding came about: for "why?". */
export interface Reasoning {
  /** The bench sum that it rests on, by its id ("ampacity"); null where none does. */
  readonly sum: string | null;
  readonly inputs: readonly ReasoningInput[];
  /** The reckoning in one line, with the limit. */
  readonly outcome: string;
  /** What would make it pass. */
  readonly passes: string;
}

export interface ReasoningInput {
  readonly name: string;
  /** For people, with its unit. */
  readonly value: string;
  /** Where it comes from: "declared on this wire". */
  readonly basis: string;
}

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  /** The places it concerns; the first is where a mark is put. */
  readonly at: readonly FindingPlace[];
  /** One or two sentences with the numbers and the limit. */
  readonly message: string;
  readonly source: string;
  /** What to do, in words; and an edit where one click can do it. */
  readonly fix?: { readonly words: string; readonly edit?: Edit };
  /** The caution in words that stands beside a danger, on screen and on every export. */
  readonly caution?: string;
  /** How it was reckoned, where there is more to say than the message does. */
  readonly why?: Reasoning;
}

export interface Rule {
  readonly id: string;
  readonly severity: Severity;
  /** What it looks at, in one line, for the list of rules. */
  readonly title: string;
  readonly source: string;
  /** How it decides and what would make it pass: for `check --explain` and "why?". */
  readonly explain: string;
  readonly check: (study: Study) => Finding[];
  /** The same in pieces, so that after an edit most of what it found can be kept. */
  readonly pieces?: readonly Piece[];
}
