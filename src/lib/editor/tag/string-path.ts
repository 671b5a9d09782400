// The string of the tag as an SVG path: it hangs a little, as a string does.
import type { Place } from '../sheet/viewport.ts';

const round = (value: number): string => value.toFixed(1);

/** A curve from the tag's hole to what it is tied to. */
export const stringPath = (from: Place, to: Place): string => {
  const across = Math.abs(to.x - from.x);
  const sag = Math.min(60, 12 + across * 0.16);
  const lower = Math.max(from.y, to.y);
  const first = { x: from.x + (to.x - from.x) * 0.2, y: Math.min(lower + sag, from.y + sag) };
  const second = { x: from.x + (to.x - from.x) * 0.75, y: to.y + sag };
  return (
    `M${round(from.x)} ${round(from.y)}` +
    `C${round(first.x)} ${round(first.y)} ${round(second.x)} ${round(second.y)} ${round(to.x)} ${round(to.y)}`
  );
};
