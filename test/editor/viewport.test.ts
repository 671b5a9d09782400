import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bringIntoView,
  fitBox,
  keepInSight,
  scaleLimits,
  seenBox,
  toDrawing,
  toScreen,
  zoomAt
} from '#editor/sheet/viewport.ts';

const seeded = { seed: 20260, numRuns: 300 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.record({ x: number(-2000, 2000), y: number(-2000, 2000) });
const viewport = fc.record({
  x: number(-5000, 5000),
  y: number(-5000, 5000),
  scale: number(0.1, 30)
});
const view = { width: 900, height: 600 };

describe('viewport', () => {
  it('goes to the screen and back', () => {
    fc.assert(
      fc.property(viewport, place, (shown, at) => {
        const back = toDrawing(shown, toScreen(shown, at));
        expect(back.x).toBeCloseTo(at.x, 6);
        expect(back.y).toBeCloseTo(at.y, 6);
      }),
      seeded
    );
  });

  it('keeps the point under the pointer where it is while zooming', () => {
    fc.assert(
      fc.property(viewport, place, number(0.2, 5), (shown, at, factor) => {
        const before = toDrawing(shown, at);
        const after = toDrawing(zoomAt(shown, factor, at), at);
        expect(after.x).toBeCloseTo(before.x, 5);
        expect(after.y).toBeCloseTo(before.y, 5);
      }),
      seeded
    );
  });

  it('never zooms past its limits', () => {
    const at = { x: 10, y: 10 };
    expect(zoomAt({ x: 0, y: 0, scale: 1 }, 1e9, at).scale).toBe(scaleLimits.most);
    expect(zoomAt({ x: 0, y: 0, scale: 1 }, 1e-9, at).scale).toBe(scaleLimits.least);
  });

  it('fits a box into the middle with its margin', () => {
    const shown = fitBox({ x: 10, y: 20, width: 400, height: 100 }, view, 20);
    expect(shown.scale).toBeCloseTo((900 - 40) / 400, 9);
    expect(toScreen(shown, { x: 10, y: 70 })).toEqual({ x: 20, y: 300 });
  });

  it('shows on screen what seenBox says', () => {
    const shown = { x: 30, y: -40, scale: 2 };
    const seen = seenBox(shown, view);
    expect(toScreen(shown, seen)).toEqual({ x: 0, y: 0 });
    expect(seen.width).toBe(450);
  });

  it('does not move for a box that is in view, and moves no further than it must', () => {
    const shown = { x: 0, y: 0, scale: 1 };
    expect(bringIntoView(shown, { x: 300, y: 300, width: 20, height: 20 }, view, 48)).toEqual(
      shown
    );
    const moved = bringIntoView(shown, { x: 1000, y: 300, width: 20, height: 20 }, view, 48);
    expect(moved).toEqual({ x: 900 - 48 - 1020, y: 0, scale: 1 });
  });

  it('zooms out only for a box that could not fit otherwise', () => {
    const shown = { x: 0, y: 0, scale: 10 };
    const box = { x: 0, y: 0, width: 400, height: 10 };
    expect(bringIntoView(shown, box, view).scale).toBeLessThan(10);
  });

  it('keeps a strip of the drawing in sight', () => {
    fc.assert(
      fc.property(viewport, (shown) => {
        const bounds = { x: 0, y: 0, width: 300, height: 200 };
        const kept = keepInSight(shown, bounds, view);
        const left = toScreen(kept, { x: 0, y: 0 });
        const right = toScreen(kept, { x: 300, y: 200 });
        expect(left.x).toBeLessThanOrEqual(view.width - 79);
        expect(left.y).toBeLessThanOrEqual(view.height - 79);
        expect(right.x).toBeGreaterThanOrEqual(79);
        expect(right.y).toBeGreaterThanOrEqual(79);
      }),
      seeded
    );
  });
});
