// The string of the tag as an SVG path. It leaves the hole away from the tag's text, upwards or to the
// side, and hangs a little, as a string does.
import type { Place } from '../sheet/viewport.ts';

const round = (value: number): string => value.toFixed(1);

/** A curve from the tag's hole to what it is tied to. */
export const stringPath = (from: Place, to: Place): string => {
  const across = to.x - from.x;
  const reach = Math.hypot(across, to.y - from.y);
  const lead = Math.min(160, Math.max(48, reach * 0.4));
  const goesUp = to.y < from.y - 24;
  const first = goesUp
    ? { x: from.x - Math.min(28, lead * 0.3), y: from.y - lead }
    : { x: from.x - lead, y: from.y };
  const second = { x: to.x - across * 0.3, y: to.y + Math.min(48, reach * 0.18) };
  return (
    `M${round(from.x)} ${round(from.y)}` +
    `C${round(first.x)} ${round(first.y)} ${round(second.x)} ${round(second.y)} ${round(to.x)} ${round(to.y)}`
  );
};
