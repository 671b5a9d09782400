// Which earlier states of a chassis are worth keeping: close together for the last hour, then fewer and
// fewer, so that a mistake of last week can be found and the store stays small.

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const dayMs = 24 * hourMs;

/** A new revision is kept when the last one is at least this old. */
export const revisionPauseMs = 5 * minuteMs;

/** Beyond this age, of the revisions of one hour, or one day, only the first stays. */
const thinning = [
  { beyondMs: dayMs, oneInMs: dayMs },
  { beyondMs: hourMs, oneInMs: hourMs }
] as const;
const mostRevisions = 40;

/** Of the times of revisions, those to let go.
 *  @param times in milliseconds, in any order
 *  @param now in the same clock */
export const revisionsToDrop = (times: readonly number[], now: number): number[] => {
  const isTaken = new Set<string>();
  const isWorthIt = (time: number): boolean => {
    const rule = thinning.find(({ beyondMs }) => now - time > beyondMs);
    if (!rule) return true;
    const slot = `${rule.oneInMs} ${Math.floor(time / rule.oneInMs)}`;
    if (isTaken.has(slot)) return false;
    isTaken.add(slot);
    return true;
  };
  const kept = [...times].sort((a, b) => a - b).filter(isWorthIt);
  const keep = new Set(kept.slice(-mostRevisions));
  return times.filter((time) => !keep.has(time));
};
