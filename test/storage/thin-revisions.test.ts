// Earlier states thin out with age.
import { revisionPauseMs, revisionsToDrop } from '#storage/thin-revisions.ts';
import { describe, expect, it } from 'vitest';

const hour = 3_600_000;

describe('earlier states', () => {
  it('of a week of steady work are few, the latest closest together', () => {
    const now = 7 * 24 * hour;
    let kept: number[] = [];
    for (let time = 0; time <= now; time += revisionPauseMs) {
      const all = [...kept, time];
      const drop = new Set(revisionsToDrop(all, time));
      kept = all.filter((one) => !drop.has(one));
    }
    expect(kept.length).toBeLessThanOrEqual(40);
    expect(kept.filter((time) => now - time <= hour).length).toBeGreaterThanOrEqual(12);
    expect(
      kept.filter((time) => now - time > hour && now - time <= 24 * hour).length
    ).toBeGreaterThan(8);
    expect(Math.min(...kept)).toBeLessThan(3 * 24 * hour);
  });

  it('that are few are all kept', () => {
    expect(revisionsToDrop([], 0)).toEqual([]);
    expect(revisionsToDrop([0, 10 * hour, 20 * hour], 21 * hour)).toEqual([]);
  });
});
