import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markChanges, toMarks, type DisplayList } from '#drawing/index.ts';
import { besideLine } from '#drawing/beside-line.ts';

const list: DisplayList = {
  bounds: { x: 0, y: 0, width: 100, height: 50 },
  items: [
    {
      id: 'paper',
      layer: 'paper',
      order: 0,
      style: 'paper',
      shape: { kind: 'box', x: 0, y: 0, width: 100, height: 50 }
    },
    {
      id: 'w',
      layer: 'wires',
      order: 1,
      style: 'wire.600',
      subject: { kind: 'wire', id: 'w1' },
      shape: { kind: 'line', points: [10, 10, 40, 10, 40, 30] }
    },
    {
      id: 'p1',
      layer: 'parts',
      order: 2,
      style: 'component',
      subject: { kind: 'part', id: 'p1' },
      shape: { kind: 'circle', x: 10, y: 40, r: 2 }
    },
    {
      id: 'p2',
      layer: 'parts',
      order: 3,
      style: 'component',
      subject: { kind: 'part', id: 'p1' },
      shape: { kind: 'circle', x: 80, y: 40, r: 2 }
    }
  ]
};

describe('marks of changes', () => {
  const marked = markChanges(list, [
    { kind: 'wire', id: 'w1', what: 'added', words: 'wire 1 added' },
    { kind: 'part', id: 'p1', what: 'changed', words: 'part C1 changed' }
  ]);

  it('run along a wire on both sides, and stand at each place of a part', () => {
    const added = marked.items.filter(({ style }) => style === 'change.added');
    const alongWire = added.filter(({ subject }) => subject?.id === 'w1');
    expect(alongWire.map(({ shape }) => shape.kind === 'line' && shape.points)).toEqual([
      [10, 11.3, 38.7, 11.3, 38.7, 30],
      [10, 8.7, 41.3, 8.7, 41.3, 30]
    ]);
    const boxes = marked.items.filter(
      ({ subject, id }) => subject?.id === 'p1' && id.startsWith('change-')
    );
    expect(boxes).toHaveLength(2);
  });

  it('say what they mean, on paper that grew for it', () => {
    const words = marked.items.flatMap(({ shape }) => (shape.kind === 'text' ? [shape.text] : []));
    expect(words).toEqual(['added (1)', 'changed (1)']);
    expect(marked.bounds.height).toBe(61);
    expect(marked.items[0]?.shape).toEqual({ kind: 'box', ...marked.bounds });
  });

  it('are made of what a drawing shows', () => {
    const change = { id: 'a', name: 'x', what: 'added', fields: [] } as const;
    expect(
      toMarks([
        { ...change, kind: 'wire' },
        { ...change, kind: 'stock' }
      ])
    ).toHaveLength(1);
  });
});

it('a line beside another keeps its distance from every stretch', () => {
  const steps = fc.array(fc.tuple(fc.integer({ min: 3, max: 30 }), fc.boolean()), {
    minLength: 1,
    maxLength: 6
  });
  fc.assert(
    fc.property(steps, fc.constantFrom(-1, 1, 1.3), (turns, offset) => {
      // Right angles, as on a diagram.
      const points = [0, 0];
      turns.forEach(([long, up], index) => {
        const [x, y] = points.slice(-2) as [number, number];
        points.push(...(index % 2 === 0 ? [x + long, y] : [x, y + (up ? long : -long)]));
      });
      const beside = besideLine(points, offset);
      for (let at = 0; at + 3 < points.length; at += 2) {
        const [ax = 0, ay = 0, bx = 0, by = 0] = points.slice(at, at + 4);
        const long = Math.hypot(bx - ax, by - ay);
        for (const end of [at, at + 2]) {
          const [x = 0, y = 0] = beside.slice(end, end + 2);
          const across = ((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / long;
          expect(Math.abs(across)).toBeCloseTo(Math.abs(offset), 9);
        }
      }
    }),
    { seed: 3, numRuns: 200 }
  );
});
