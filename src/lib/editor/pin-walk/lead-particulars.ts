// The particulars of a lead that can be put right afterwards, each an edit of its own. What is typed and
// cannot be read is refused with the way out, and nothing is changed.
import { setWireFields } from '#document/edits.ts';
import type { Edit, Wire } from '#document/index.ts';
import { formatColour, parseColour } from '#handbook/index.ts';
import { readBands } from '#handbook/resistor-bands.ts';
import { changeElement } from '#document/edits.ts';
import { colourText } from '../core/words.ts';
import type { EndNames } from '../schedule/end-text.ts';
import { setFarEnd, type HowKnown } from './lead-edits.ts';
import { otherEnd, type Lead, type PartLead, type WireLead } from './leads.ts';

export type Particular =
  { readonly ok: true; readonly edit: Edit | null } | { readonly ok: false; readonly why: string };

const edit = (made: Edit | null): Particular => ({ ok: true, edit: made });

export const colourOf = ({ wire }: WireLead): string =>
  colourText(wire.found.colour, wire.found.tracer);

/** "white/red": colour and tracer; empty takes both away. */
export const setColour = ({ wire }: WireLead, text: string): Particular => {
  const trimmed = text.trim();
  if (trimmed === '')
    return edit(setWireFields(wire.id, { found: { colour: null, tracer: null } }));
  const parsed = parseColour(trimmed);
  if (parsed === null) {
    return { ok: false, why: `"${trimmed}" is no colour: write, for example, white/red` };
  }
  const found = { colour: formatColour(parsed), tracer: parsed.tracer };
  return edit(setWireFields(wire.id, { found }));
};

/** Where the other end is, as it is typed; empty and "?" say not yet. */
export const setFar = (
  lead: Lead,
  text: string,
  how: HowKnown,
  ends: Pick<EndNames, 'read'>
): Particular => {
  const made = setFarEnd(lead, ends.read(text), how);
  return made === null ? { ok: false, why: 'this part has no second lead' } : edit(made);
};

export const setKnown = ({ wire, here }: WireLead, how: HowKnown): Edit =>
  setWireFields(wire.id, { [otherEnd(here)]: { known: how } });

export const setOrigin = ({ wire }: WireLead, origin: Wire['origin'] | null): Edit =>
  setWireFields(wire.id, { origin: origin ?? null });

export const setIsPart = ({ wire }: WireLead, isPart: Wire['isPart'] | null): Edit =>
  setWireFields(wire.id, { isPart: isPart ?? null });

export const setText = ({ wire }: WireLead, key: 'dress' | 'notes', text: string): Edit =>
  setWireFields(wire.id, { [key]: text.trim() === '' ? null : text.trim() });

/** A value as it is printed on the part, or in bands: "47k", "yellow violet orange". */
export const setPartValue = ({ part }: PartLead, text: string): Edit => {
  const bands = part.kind === 'resistor' ? readBands(text) : null;
  const value = bands?.text ?? text.trim();
  return changeElement('part', part.id, { value: value === '' ? null : value });
};

export const setReference = ({ part }: PartLead, text: string): Particular => {
  const reference = text.trim();
  if (reference === '') return { ok: false, why: 'a part needs a name, such as R47' };
  return edit(changeElement('part', part.id, { reference }));
};
