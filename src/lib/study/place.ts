// Where terminals and supports stand in their unit, true to scale, seen from below: x to the right,
// y down the page, parts turned clockwise.
import type { Part, Point, Terminal } from '#document/index.ts';

export interface Place3 {
  readonly x: number;
  readonly y: number;
  /** Height over the deck, mm; null where nobody gave it. */
  readonly heightMm: number | null;
}

/** A terminal's place in its unit, mm; null for a part that nobody placed. A terminal without an
 *  offset of its own stands in the middle of its part. */
export function findTerminalPlace(part: Part, terminal: Terminal): Place3 | null {
  if (!part.place) return null;
  const { x, y, rotation = 0 } = part.place;
  const offset = turned(terminal.offset ?? { x: 0, y: 0 }, rotation);
  return { x: x + offset.x, y: y + offset.y, heightMm: terminal.heightMm ?? null };
}

/** An offset turned clockwise by degrees. */
function turned({ x, y }: Point, degrees: number): Point {
  if (degrees === 0) return { x, y };
  const angle = (degrees * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** Millimetres from one place to the next: across the deck, and up or down where both heights are known. */
export function stepMm(a: Place3, b: Place3): number {
  const across = Math.hypot(b.x - a.x, b.y - a.y);
  const climb = a.heightMm === null || b.heightMm === null ? 0 : Math.abs(b.heightMm - a.heightMm);
  return across + climb;
}
