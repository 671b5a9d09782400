import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DisplayItem } from '#drawing/display-list.ts';
import { buildHitIndex, distanceToPiece } from '#editor/sheet/hit-test.ts';

const item = (id: string, rest: Omit<DisplayItem, 'id' | 'order' | 'style'>): DisplayItem => ({
  id,
  order: 0,
  style: 'wire.300',
  ...rest
});

const wire = (id: string, points: number[]): DisplayItem =>
  item(id, { layer: 'wires', shape: { kind: 'line', points }, subject: { kind: 'wire', id } });

const part = item('V1', {
  layer: 'parts',
  shape: { kind: 'box', x: 10, y: 10, width: 20, height: 20 },
  subject: { kind: 'part', id: 'V1' }
});

describe('hit test', () => {
  it('finds the nearer of two wires, within reach only', () => {
    const hits = buildHitIndex([wire('a', [0, 0, 100, 0]), wire('b', [0, 3, 100, 3])]);
    expect(hits.find({ x: 50, y: 1 }, 5)?.id).toBe('a');
    expect(hits.find({ x: 50, y: 2 }, 5)?.id).toBe('b');
    expect(hits.find({ x: 50, y: 9 }, 5)).toBeNull();
  });

  it('does not take a bent wire by the box around it', () => {
    const hits = buildHitIndex([wire('bent', [0, 0, 100, 0, 100, 100])]);
    expect(hits.find({ x: 30, y: 70 }, 5)).toBeNull();
    expect(hits.find({ x: 98, y: 70 }, 5)?.id).toBe('bent');
  });

  it('prefers a terminal to the wire that ends there and to its part', () => {
    const pin = item('V1/5', {
      layer: 'terminals',
      shape: { kind: 'circle', x: 30, y: 20, r: 1 },
      subject: { kind: 'terminal', id: 'V1/5' }
    });
    const hits = buildHitIndex([part, wire('a', [30, 20, 90, 20]), pin]);
    expect(hits.find({ x: 30.5, y: 20 }, 2)?.id).toBe('V1/5');
    expect(hits.find({ x: 60, y: 20 }, 2)?.id).toBe('a');
    expect(hits.find({ x: 15, y: 15 }, 2)?.id).toBe('V1');
  });

  it('never picks what is no subject, nor the paper', () => {
    const frame = item('frame', {
      layer: 'frame',
      shape: { kind: 'box', x: 0, y: 0, width: 100, height: 100 },
      subject: { kind: 'unit', id: 'main' }
    });
    const plain = item('plain', { layer: 'wires', shape: { kind: 'line', points: [0, 5, 50, 5] } });
    expect(buildHitIndex([frame, plain]).find({ x: 20, y: 5 }, 3)).toBeNull();
  });

  it('gives the box around all that is drawn of a subject', () => {
    const label = item('V1 label', {
      layer: 'parts',
      shape: { kind: 'box', x: 0, y: 32, width: 40, height: 4 },
      subject: { kind: 'part', id: 'V1' }
    });
    const hits = buildHitIndex([part, label]);
    expect(hits.boxOf({ kind: 'part', id: 'V1' })).toEqual({ x: 0, y: 10, width: 40, height: 26 });
    expect(hits.boxOf({ kind: 'part', id: 'V2' })).toBeNull();
  });

  it('lists what touches a box, for culling', () => {
    const near = wire('near', [0, 0, 10, 0]);
    const far = wire('far', [500, 500, 600, 500]);
    const within = buildHitIndex([near, far]).within({ x: -5, y: -5, width: 50, height: 50 });
    expect([...within]).toEqual([near]);
  });

  it('measures the distance to a piece as sampling along it does', () => {
    const coordinate = fc.integer({ min: -100, max: 100 });
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        coordinate,
        coordinate,
        coordinate,
        coordinate,
        (...n) => {
          const [x1, y1, x2, y2, x, y] = n;
          let least = Infinity;
          for (let step = 0; step <= 2000; step++) {
            const t = step / 2000;
            least = Math.min(least, Math.hypot(x1 + t * (x2 - x1) - x, y1 + t * (y2 - y1) - y));
          }
          expect(Math.abs(distanceToPiece({ x, y }, [x1, y1, x2, y2]) - least)).toBeLessThan(0.15);
        }
      ),
      { seed: 7, numRuns: 60 }
    );
  });
});
