import { describe, expect, test } from 'vitest';
import {
  baseIds,
  findTubeBase,
  pinPlaces,
  topCaps,
  tubeBaseOf,
  tubeBases
} from '#handbook/index.ts';

// Source: published table of tube base dimensions (octal 17.5 mm and 22.5 degrees from the key also
// on the 6V6GT outline drawing; miniature 3/8 in; noval 15/32 in, 36 degrees). The last two rows are
// from memory.
const published = [
  { id: 'octal', pins: 8, circleMm: 17.5, within: 0.05, stepDeg: 45, gapDeg: 45 },
  { id: '7-pin miniature', pins: 7, circleMm: 9.525, within: 0.03, stepDeg: 45, gapDeg: 90 },
  { id: 'noval', pins: 9, circleMm: 11.906, within: 0.01, stepDeg: 36, gapDeg: 72 },
  { id: 'duodecar', pins: 12, circleMm: 19.05, within: 0.01, stepDeg: 27.69, gapDeg: 55.38 },
  { id: 'novar', pins: 9, circleMm: 17.45, within: 0.01, stepDeg: 36, gapDeg: 72 }
] as const;

const angleFromKeyDeg = ({ x, y }: { x: number; y: number }): number =>
  (Math.atan2(-x, y) * 180) / Math.PI;

describe('tube bases', () => {
  test.each(published)(
    '$id stands as published',
    ({ id, pins, circleMm, within, stepDeg, gapDeg }) => {
      const places = pinPlaces(id);
      expect(places.map((place) => place.pin)).toEqual(
        Array.from({ length: pins }, (_, index) => String(index + 1))
      );
      for (const place of places) {
        expect(Math.abs(2 * Math.hypot(place.x, place.y) - circleMm)).toBeLessThanOrEqual(within);
      }
      const angles = places.map((place) => (angleFromKeyDeg(place) + 360) % 360);
      for (let index = 1; index < angles.length; index += 1) {
        expect(angles[index]! - angles[index - 1]!).toBeCloseTo(stepDeg, 1);
      }
      expect(360 - angles[angles.length - 1]! + angles[0]!).toBeCloseTo(gapDeg, 1);
    }
  );

  // Source: the article on valve bases in the open encyclopedia: clockwise seen from below.
  test('octal pin 1 stands left of the key, which points down, and pins go on clockwise', () => {
    const [first, second] = pinPlaces('octal');
    expect(first!.x).toBeLessThan(0);
    expect(first!.y).toBeGreaterThan(0);
    // Clockwise on a page whose y grows downwards: from the bottom by the left to the top.
    expect(second!.x).toBeLessThan(first!.x);
    expect(second!.y).toBeLessThan(first!.y);
  });

  test('every base has an id of the list, distinct pins, and a mark', () => {
    expect(tubeBases.map((base) => base.id).toSorted()).toEqual([...baseIds].toSorted());
    for (const base of tubeBases) {
      const places = pinPlaces(base);
      expect(new Set(places.map(({ x, y }) => `${x} ${y}`)).size).toBe(base.pins);
      expect(base.source).not.toBe('');
    }
    expect(topCaps.every((cap) => cap.mark === 'from memory')).toBe(true);
  });

  test.each([
    ['B9A', 'noval'],
    ['9-pin', 'noval'],
    ['Octal socket', 'octal'],
    ['b7g', '7-pin miniature'],
    ['Loktal', 'loctal']
  ])('%s is the base %s', (text, id) => expect(findTubeBase(text)?.id).toBe(id));

  test('an unknown name has no base, an unknown id is refused by name', () => {
    expect(findTubeBase('13-pin wonder')).toBeNull();
    expect(() => tubeBaseOf('nonsense' as never)).toThrow(/nonsense/);
  });
});
