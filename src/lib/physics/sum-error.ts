// The one error that a sum throws: which input, what it was, what the limit is and the way out.
// A sum never answers NaN or Infinity, and never guesses past the end of a table.

export type SumProblem =
  | 'unknown sum'
  | 'unknown input'
  | 'missing'
  | 'unreadable'
  | 'not a number'
  | 'out of range'
  | 'outside the table';

export interface SumErrorParts {
  readonly problem: SumProblem;
  /** The input's name, or the sum's id where no input is to blame. */
  readonly input: string;
  /** What was given, as text; empty when nothing was. */
  readonly value: string;
  /** What would have been accepted: "0 to 40000 V". */
  readonly limit: string;
  readonly wayOut: string;
}

export class SumError extends Error {
  readonly problem: SumProblem;
  readonly input: string;
  readonly value: string;
  readonly limit: string;
  readonly wayOut: string;

  constructor(parts: SumErrorParts) {
    super(messageOf(parts));
    this.name = 'SumError';
    this.problem = parts.problem;
    this.input = parts.input;
    this.value = parts.value;
    this.limit = parts.limit;
    this.wayOut = parts.wayOut;
  }
}

function messageOf({ problem, input, value, limit, wayOut }: SumErrorParts): string {
  const given = value === '' ? '' : ` (given: ${value})`;
  const accepted = limit === '' ? '' : `; accepted: ${limit}`;
  return `${input}: ${problem}${given}${accepted}. ${wayOut}`;
}
