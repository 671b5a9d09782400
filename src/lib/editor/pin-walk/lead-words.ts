// Leads, parts and counts in words, the same on screen, in the live line and for those who hear them.
import { parseColour } from '#handbook/index.ts';
import type { Wire } from '#document/index.ts';
import { counted } from '../core/words.ts';
import type { Lead, LeadCount } from './leads.ts';

/** Conductors that have no colour of their own to speak of. */
const bareKinds: ReadonlySet<string> = new Set(['bare bus', 'braid', 'shield', 'component lead']);

/** A colour as people say it: "blue", "red with a yellow tracer", "bare", "colour not told". */
export const colourWords = ({
  found,
  construction
}: Pick<Wire, 'found' | 'construction'>): string => {
  const { colour, tracer } = found;
  if (colour !== undefined && colour !== '') {
    return tracer === undefined || tracer === '' ? colour : `${colour} with a ${tracer} tracer`;
  }
  if (construction === 'bare bus') return 'bare';
  return bareKinds.has(construction) ? construction : 'colour not told';
};

/** "the blue", "the resistor R?1". */
export const leadName = (lead: Lead): string => {
  if (lead.kind === 'part') return `${lead.part.kind} ${lead.part.reference}`.trim();
  const { found } = lead.wire;
  const words = colourWords(lead.wire);
  const isColour = found.colour !== undefined && parseColour(found.colour) !== null;
  return isColour || words === 'bare' ? words : `wire ${lead.wire.number}`.trim();
};

/** Where the other end is: "to TS3-2", "not yet found", "as written: into the loom". */
export const farWords = ({ far }: Lead): string => {
  if (far.isFound) return far.label === '' ? '' : `to ${far.label}`;
  return far.label === '' ? 'other end not yet' : `"${far.label}", not yet found`;
};

/** "2 leads", "2 of 3 leads, 1 not accounted for", "3 leads, 2 counted". */
export const countWords = ({ recorded, counted: seen, unaccounted }: LeadCount): string => {
  if (seen === null || unaccounted === null)
    return recorded === 0 ? 'no lead yet' : counted(recorded, 'lead');
  if (unaccounted === 0)
    return seen === 0 ? 'no lead here' : `${counted(seen, 'lead')}, all recorded`;
  return unaccounted > 0
    ? `${recorded} of ${counted(seen, 'lead')}, ${unaccounted} not accounted for`
    : `${counted(recorded, 'lead')}, only ${seen} counted`;
};
