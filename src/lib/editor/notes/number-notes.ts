// Findings as numbered notes: the worst first, in the order that the validator gives them. The
// drawing numbers its marks from the same list.
import type { Finding } from '#checks/index.ts';

export interface MarginNote {
  readonly id: string;
  readonly number: number;
  readonly finding: Finding;
  /** Where it is, short: "60", "V8". */
  readonly where: string;
}

export const numberNotes = (findings: readonly Finding[]): readonly MarginNote[] =>
  findings.map((finding, index) => ({
    id: String(index),
    number: index + 1,
    finding,
    where: (finding.at[0]?.label ?? '').replace(/^wire /, '')
  }));

export const idsOf = (notes: readonly MarginNote[]): ReadonlySet<string> =>
  new Set(notes.map(({ id }) => id));
