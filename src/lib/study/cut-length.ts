// What to cut for a wire: its length, the policy's slack, what both ends take, rounded up.
import type { Policy, WireEnd } from '#document/index.ts';
import { cutLengthMm } from '#physics/length.ts';
import { stripFor } from '#physics/strip.ts';
import { formatNumber, roundSignificant } from '#quantity/index.ts';
import type { WireSlot } from './index-wires.ts';
import type { CutLength, TerminalEntry, WireLength } from './types.ts';

/** How a conductor is ended, in the words that the strip table knows its endings by. */
const endingByTermination: ReadonlyMap<string, string> = new Map([
  ['wrap', 'wrap post'],
  ['hook', 'solder lug'],
  ['lap', 'solder lug']
]);

/** Bare length at an end, mm: as declared, else by how it is ended and the gauge. */
function stripAtMm(at: TerminalEntry | undefined, end: WireEnd, awg: number): number {
  if (end.stripMm !== undefined) return end.stripMm;
  const made = at?.terminal.ending;
  const { termination } = end;
  const way = termination === undefined ? undefined : endingByTermination.get(termination);
  // "Wrapped" on a solder lug is a turn of wire, not the many turns of a post.
  const ending = way === undefined || made === 'solder lug' ? (made ?? termination) : way;
  return roundSignificant(stripFor(ending, awg).mm, 3);
}

/** The cut length, or null where the length is not known. A lead that must keep its length gets no
 *  slack beyond its strips. */
export function cutLengthOf(
  { wire, from, to }: WireSlot,
  length: WireLength | null,
  awg: number,
  policy: Policy
): CutLength | null {
  if (!length) return null;
  const stripFromMm = stripAtMm(from, wire.from, awg);
  const stripToMm = stripAtMm(to, wire.to, awg);
  const keeps = wire.critical?.keepLength === true;
  const slackShare = keeps ? 0 : policy.slackShare;
  const fixedMm = keeps ? 0 : policy.slackMm;
  const { roundUpMm } = policy;
  const mm = cutLengthMm({
    pathMm: length.mm,
    slackShare,
    slackMm: fixedMm,
    stripFromMm,
    stripToMm,
    roundUpMm
  });
  const slackMm = roundSignificant(length.mm * slackShare + fixedMm);
  const slackText = keeps ? 'no slack: its length is kept' : `slack ${formatNumber(slackMm, 3)}`;
  const basis = `${formatNumber(length.mm)} + ${slackText} + strips ${formatNumber(stripFromMm, 3)} and ${formatNumber(stripToMm, 3)}, up to the next ${formatNumber(roundUpMm)} mm`;
  return { mm, slackMm, stripFromMm, stripToMm, basis };
}
