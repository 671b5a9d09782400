// Pins count clockwise from the gap seen from below: the basing diagrams of the trade, and the circle of
// 15/32 in with places at 36 degrees of the published table of base dimensions (noval).
import { describe, expect, it } from 'vitest';
import { buildRing } from '#editor/pin-walk/ring-view.ts';
import { recentColours } from '#editor/pin-walk/recent-colours.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';

const build = (rotation = 0) =>
  buildStudy(
    chassis('Bench set')
      .unit('Main chassis')
      .tube('V1', '6CG7', { at: [40, 40], rotation })
      .strip('TS3', 5)
      .wire(1, 'V1-3', 'TS3-1', { colour: 'blue' })
      .wire(2, 'V1-3', null, { colour: 'red', tracer: 'white' })
      .wire(3, 'V1-4', null, { colour: 'Blue' })
      .build()
  );
const ringOf = (reference: string, rotation = 0) => {
  const study = build(rotation);
  const part = study.index.parts.find((one) => one.reference === reference)!;
  const ring = buildRing(study, part.id, study.index.terminals[2]?.key ?? null);
  if (ring === null) throw new Error(`no ring of ${reference}`);
  return ring;
};
const degreesFromGap = ({ x, y }: { x: number; y: number }): number =>
  (Math.round((Math.atan2(-x, y) * 180) / Math.PI) + 360) % 360;

describe('the ring of a socket', () => {
  it('has its pins clockwise from the gap, as seen from below', () => {
    const { stops, index } = ringOf('V1');
    expect(stops.map(({ name }) => name)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9']);
    expect(stops.map(degreesFromGap)).toEqual([36, 72, 108, 144, 180, 216, 252, 288, 324]);
    expect(index).toMatchObject({ kind: 'gap' });
    expect(degreesFromGap(index!)).toBe(0);
  });

  it('is turned as the socket is turned on the chassis, gap and pins alike', () => {
    const { stops, index } = ringOf('V1', 90);
    expect(degreesFromGap(stops[0]!)).toBe(126);
    expect(degreesFromGap(index!)).toBe(90);
  });

  it('leaves its discs clear of each other and inside the frame', () => {
    for (const { stops, radius, viewBox } of [ringOf('V1'), ringOf('TS3')]) {
      const [left = 0, top = 0, width = 0, height = 0] = viewBox.split(' ').map(Number);
      stops.forEach((one, index) => {
        expect(one.x - radius).toBeGreaterThanOrEqual(left);
        expect(one.y - radius).toBeGreaterThanOrEqual(top);
        expect(one.x + radius).toBeLessThanOrEqual(left + width);
        expect(one.y + radius).toBeLessThanOrEqual(top + height);
        for (const other of stops.slice(index + 1)) {
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(2 * radius);
        }
      });
    }
  });

  it('says what is known at each terminal', () => {
    const { stops } = ringOf('V1');
    expect(stops[2]).toMatchObject({ isHere: true, isLookedAt: true, halfTraced: 1 });
    expect(stops[2]?.count.recorded).toBe(2);
    expect(stops[0]).toMatchObject({ isHere: false, isLookedAt: false, halfTraced: 0 });
  });
});

describe('the colours used last', () => {
  it('come newest first, each once, with its tracer', () => {
    const study = build();
    expect(recentColours(study, 5)).toEqual([
      { colour: 'Blue', tracer: null },
      { colour: 'red', tracer: 'white' }
    ]);
    expect(recentColours(study, 1)).toHaveLength(1);
  });
});
