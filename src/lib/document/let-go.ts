// What happens to those that pointed to an element when it is removed: they let go, and keep in words
// what they pointed to. A wire's end that was at V3-5 is an end not found, with "V3-5" written on it,
// so that its stress is not known again; nothing is guessed in its place.
//
// Two references stay and dangle, to be told by a rule: a part's unit, which it must have, and
// the ends of an electrical element, since an element without a second terminal stands for one to metal.
import { findTerminalLabel } from './references.ts';
import type { Cable } from './wire-schema.ts';
import type { Part } from './part-schema.ts';
import type { Id, TerminalRef } from './primitives.ts';
import type { ChassisDocument } from './schema.ts';
import type { WorkingCopy } from './working-copy.ts';

const shortTextLimit = 400;
const textLimit = 20_000;

const letGoOfTerminals = (
  work: WorkingCopy,
  before: ChassisDocument,
  isGone: (ref: TerminalRef) => boolean
): void => {
  for (const wire of work.elements('wire')) {
    for (const key of ['from', 'to'] as const) {
      const { at, as } = wire[key];
      if (!at || !isGone(at)) continue;
      const end = work.change('wire', wire.id)[key];
      delete end.at;
      const label = findTerminalLabel(before, at);
      if (label !== undefined && (as === undefined || as === '')) {
        end.as = label.slice(0, shortTextLimit);
      }
    }
  }
  for (const part of work.elements('part')) {
    for (const { id, on, notes } of Object.values(part.terminals)) {
      if (!on || !isGone(on)) continue;
      const terminal = work.change('part', part.id).terminals[id];
      if (!terminal) continue;
      delete terminal.on;
      const words = `was on ${findTerminalLabel(before, on) ?? 'a terminal that is gone'}`;
      terminal.notes = (notes ? `${notes}; ${words}` : words).slice(0, textLimit);
    }
  }
};

/** To be called when the part has been taken out of the working copy. */
export const letGoOfPart = (work: WorkingCopy, before: ChassisDocument, id: Id): void => {
  letGoOfTerminals(work, before, (ref) => ref.part === id);
  for (const part of work.elements('part')) {
    if (part.mates === id) delete work.change('part', part.id).mates;
  }
};

export const letGoOfTerminalsOf = (
  work: WorkingCopy,
  before: ChassisDocument,
  part: Part['id'],
  terminals: ReadonlySet<Id>
): void =>
  letGoOfTerminals(work, before, (ref) => ref.part === part && terminals.has(ref.terminal));

export const letGoOfCable = (work: WorkingCopy, id: Cable['id']): void => {
  for (const wire of work.elements('wire')) {
    if (wire.cable === id) delete work.change('wire', wire.id).cable;
  }
};

export const letGoOfStock = (work: WorkingCopy, id: Id): void => {
  for (const wire of work.elements('wire')) {
    if (wire.planned.stock === id) delete work.change('wire', wire.id).planned.stock;
  }
};

export const letGoOfSupport = (work: WorkingCopy, id: Id): void => {
  for (const wire of work.elements('wire')) {
    if (wire.route?.supports.includes(id) !== true) continue;
    const { route } = work.change('wire', wire.id);
    if (route) route.supports = route.supports.filter((support) => support !== id);
  }
};
