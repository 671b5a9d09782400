import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { layOnPaper, PaperError, paperNames } from '#drawing/index.ts';
import { clipLine } from '#drawing/paper/clip-line.ts';
import { faceRuns } from '#drawing/paper/face-runs.ts';
import { marginMm, overlapMm } from '#drawing/paper/lay-on-paper.ts';

const seed = 20_261;
const side = fc.double({ min: 5, max: 900, noNaN: true });

describe('a drawing on paper', () => {
  it('is covered by its sheets, which share their strip', () => {
    fc.assert(
      fc.property(
        side,
        side,
        fc.constantFrom(...paperNames),
        fc.constantFrom(0.25, 0.5, 1, 'fit' as const),
        (width, height, paper, scale) => {
          const bounds = { x: -3, y: 7, width, height };
          const plan = layOnPaper(bounds, { paper, scale });
          const boxes = plan.windows.map(({ box }) => box);
          const near = 1e-6;
          expect(Math.min(...boxes.map(({ x }) => x))).toBeLessThanOrEqual(bounds.x + near);
          expect(Math.min(...boxes.map(({ y }) => y))).toBeLessThanOrEqual(bounds.y + near);
          const right = Math.max(...boxes.map((box) => box.x + box.width));
          const bottom = Math.max(...boxes.map((box) => box.y + box.height));
          expect(right).toBeGreaterThanOrEqual(bounds.x + width - near);
          expect(bottom).toBeGreaterThanOrEqual(bounds.y + height - near);
          expect(plan.windows).toHaveLength(plan.columns * plan.rows);
          for (const { box, column, row } of plan.windows) {
            expect(box.width * plan.scale).toBeCloseTo(plan.width - 2 * marginMm, 6);
            const next = plan.windows.find(
              (other) => other.row === row && other.column === column + 1
            );
            if (next)
              expect((box.x + box.width - next.box.x) * plan.scale).toBeCloseTo(overlapMm, 6);
          }
          if (scale === 'fit') expect(plan.windows).toHaveLength(1);
        }
      ),
      { seed, numRuns: 300 }
    );
  });

  it('takes the way round that needs fewer sheets', () => {
    const wide = { x: 0, y: 0, width: 270, height: 180 };
    const plan = layOnPaper(wide, { paper: 'A4', scale: 1 });
    expect([plan.width, plan.height, plan.windows.length]).toEqual([297, 210, 1]);
  });

  it('is as wide as the sheets side by side that were asked for', () => {
    const plan = layOnPaper(
      { x: 0, y: 0, width: 800, height: 300 },
      { paper: 'A4', scale: 'fit', across: 3 }
    );
    expect(plan.columns).toBe(3);
    expect(plan.scale * 800).toBeGreaterThan(400);
  });

  it('says why it cannot be', () => {
    const bounds = { x: 0, y: 0, width: 5000, height: 5000 };
    expect(() => layOnPaper(bounds, { paper: 'A4', scale: 1 })).toThrow(PaperError);
    expect(() => layOnPaper(bounds, { paper: 'A4', scale: 0 })).toThrow(/0\.01 to 100/);
    expect(() => layOnPaper(bounds, { paper: 'A4', scale: 'fit', across: 0.5 })).toThrow(
      /whole number/
    );
  });
});

describe('a line cut to a box', () => {
  it('lies inside, and what is outside is gone', () => {
    const box = { x: 0, y: 0, width: 10, height: 10 };
    expect(clipLine([-5, 5, 15, 5], box)).toEqual([[0, 5, 10, 5]]);
    expect(clipLine([2, 2, 8, 8], box)).toEqual([[2, 2, 8, 8]]);
    expect(clipLine([-5, -5, -1, -1], box)).toEqual([]);
    expect(clipLine([5, 5, 15, 5, 15, 8, 5, 8], box)).toEqual([
      [5, 5, 10, 5],
      [10, 8, 5, 8]
    ]);
  });
});

it('every letter that a face is said to have is in it', () => {
  const faces = new Map<string, Font>();
  let asked = 0;
  for (const face of ['sans', 'mono'] as const)
    for (const bold of [false, true])
      for (let point = 0x20; point < 0x2500; point++) {
        const [run] = faceRuns(String.fromCodePoint(point), face, bold);
        if (!run?.file) continue;
        const family = run.file.startsWith('ibm-plex-sans') ? 'ibm-plex-sans' : 'ibm-plex-mono';
        const known = faces.get(run.file);
        const font =
          known ??
          (create(
            readFileSync(`node_modules/@fontsource/${family}/files/${run.file}.woff`)
          ) as Font);
        faces.set(run.file, font);
        asked++;
        for (const letter of run.text)
          expect(
            font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0),
            `${run.file} ${letter}`
          ).toBe(true);
      }
  expect(asked).toBeGreaterThan(1500);
  expect(faces.size).toBeGreaterThan(10);
});
