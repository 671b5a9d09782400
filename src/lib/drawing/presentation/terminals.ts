// Terminals looked up for the diagram: which part a reference means, and which terminals are metal.
import type { Id, Part, Terminal, TerminalRef } from '#document/index.ts';

export type PartMap = ReadonlyMap<Id, Part>;

export interface TerminalPlace {
  readonly part: Part;
  readonly terminal: Terminal;
}

/** Joined to the metal of its unit: a ground lug, a strip's foot. */
export const isMetal = (terminal: Terminal): boolean => terminal.grounded === true;

/** The terminal that a reference means, or null where part or terminal are missing. */
export const resolveEnd = (parts: PartMap, ref: TerminalRef): TerminalPlace | null => {
  const part = parts.get(ref.part);
  const terminal = part?.terminals[ref.terminal];
  return part && terminal && Object.hasOwn(part.terminals, ref.terminal)
    ? { part, terminal }
    : null;
};
