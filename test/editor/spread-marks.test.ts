import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DisplayItem } from '#drawing/display-list.ts';
import { findMarkAt, leastMarkPx, marksOf, spreadMarks } from '#editor/sheet/spread-marks.ts';

const disc = (id: string, x: number, y: number): DisplayItem => ({
  id: `finding-${id}-disc`,
  layer: 'findings',
  order: 0,
  style: 'finding.danger.disc',
  shape: { kind: 'circle', x, y, r: 2 },
  subject: { kind: 'finding', id }
});

describe('the marks of findings', () => {
  it('lie where they are when the paper is near', () => {
    const marks = spreadMarks(marksOf([disc('0', 10, 10), disc('1', 40, 10)]), 10);
    expect([...marks.values()].map(({ shift, grow }) => ({ shift, grow }))).toEqual([
      { shift: { x: 0, y: 0 }, grow: 1 },
      { shift: { x: 0, y: 0 }, grow: 1 }
    ]);
  });

  it('keep their size on screen when it is far, the first in its own place', () => {
    const marks = spreadMarks(marksOf([disc('0', 10, 10), disc('1', 11, 10)]), 0.5);
    const [first, second] = [...marks.values()];
    expect(first!.grow * first!.radiusMm * 0.5).toBeCloseTo(leastMarkPx, 9);
    expect(first!.shift).toEqual({ x: 0, y: 0 });
    expect(second!.shift).not.toEqual({ x: 0, y: 0 });
  });

  it('never lie on each other, as long as there is room around', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 400 }),
      y: fc.integer({ min: 0, max: 200 })
    });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 12 }), (places) => {
        const items = places.map(({ x, y }, index) => disc(String(index), x, y));
        const marks = [...spreadMarks(marksOf(items), 0.5).values()];
        for (const a of marks) {
          for (const b of marks) {
            if (a === b) continue;
            const distance = Math.hypot(
              a.x + a.shift.x - b.x - b.shift.x,
              a.y + a.shift.y - b.y - b.shift.y
            );
            expect(distance).toBeGreaterThan((2 * leastMarkPx * 0.97) / 0.5);
          }
        }
      }),
      { seed: 5, numRuns: 100 }
    );
  });

  it('are picked where they are seen', () => {
    const marks = spreadMarks(marksOf([disc('0', 10, 10), disc('1', 10, 10)]), 0.5);
    const second = marks.get('1')!;
    const at = { x: 10 + second.shift.x, y: 10 + second.shift.y };
    expect(findMarkAt(marks, at, 1)!.subject!.id).toBe('1');
    expect(findMarkAt(marks, { x: 300, y: 300 }, 1)).toBeNull();
  });
});
