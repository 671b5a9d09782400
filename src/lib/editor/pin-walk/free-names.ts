// Names for what is met on the way and has none yet. A part that nobody has looked up in the service data
// carries a question mark, so that no made-up number is taken for one of the maker's.
import type { ChassisDocument } from '#document/index.ts';
import type { LeadPartKind } from './noted-lead.ts';

const letters: Readonly<Record<LeadPartKind, string>> = {
  resistor: 'R',
  capacitor: 'C',
  coil: 'L',
  rectifier: 'CR',
  lamp: 'I',
  fuse: 'F',
  other: 'X'
};

const referencesOf = ({ parts }: ChassisDocument): ReadonlySet<string> =>
  new Set(Object.values(parts).map(({ reference }) => reference.toLowerCase()));

const firstFree = (taken: ReadonlySet<string>, nameAt: (number: number) => string): string => {
  for (let number = 1; ; number++) {
    const name = nameAt(number);
    if (!taken.has(name.toLowerCase())) return name;
  }
};

/** "R?1": a resistor whose own number nobody has looked up. */
export const unknownReference = (document: ChassisDocument, kind: LeadPartKind): string =>
  firstFree(referencesOf(document), (number) => `${letters[kind]}?${number}`);

/** "SPL2": splices have no numbers in service data, so ours are as good as any. */
export const spliceReference = (document: ChassisDocument): string =>
  firstFree(referencesOf(document), (number) => `SPL${number}`);

/** "12b" for the second piece of wire 12. */
export const pieceNumber = ({ wires }: ChassisDocument, number: string): string => {
  const taken = new Set(Object.values(wires).map((wire) => wire.number.toLowerCase()));
  for (const letter of 'bcdefghijklmnopqrstuvwxyz') {
    if (!taken.has(`${number}${letter}`.toLowerCase())) return `${number}${letter}`;
  }
  return firstFree(taken, (count) => `${number}b${count}`);
};
