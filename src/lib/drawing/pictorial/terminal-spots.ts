// Every terminal that can be drawn at its place: of placed parts, and of components that hang by
// their leads, which end where their hosts' terminals are.
import type { TerminalRef } from '#document/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Spot } from '../presentation/sides.ts';
import { exitsOf, type Exit } from './exits.ts';
import type { SheetPlaces } from './sheet-places.ts';

export interface TerminalSpot {
  readonly key: string;
  readonly at: Spot;
  /** Ways out; empty where a wire may leave any way. */
  readonly exits: readonly Exit[];
}

/** Terminals by key. Those of parts in a tray are left out: nobody knows where they are. */
export function listTerminalSpots({ parts, hanging }: SheetPlaces): Map<string, TerminalSpot> {
  const spots = new Map<string, TerminalSpot>();
  for (const placed of parts.values()) {
    if (placed.inTray) continue;
    for (const [id, at] of placed.spots) {
      const key = terminalKey(placed.part.id, id);
      spots.set(key, { key, at, exits: exitsOf(placed, id) });
    }
  }
  // A lead may sit on another hanging lead: go on until nothing more is found.
  for (let grew = true; grew;) {
    grew = false;
    for (const { part, terminals } of hanging) {
      for (const { id, on } of terminals) {
        const key = terminalKey(part.id, id);
        const host = on && spots.get(hostKey(on));
        if (!host || spots.has(key)) continue;
        spots.set(key, { ...host });
        grew = true;
      }
    }
  }
  return spots;
}

/** The key of the terminal that a lead sits on. */
export const hostKey = (on: TerminalRef): string => terminalKey(on.part, on.terminal);
