import { describe, expect, it } from 'vitest';
import {
  restingGesture,
  stepGesture,
  wheelFactor,
  type GestureAction,
  type PointerInput
} from '#editor/sheet/gesture.ts';

const run = (...inputs: PointerInput[]): GestureAction[] => {
  const actions: GestureAction[] = [];
  let state = restingGesture;
  for (const input of inputs) {
    const step = stepGesture(state, input);
    state = step.state;
    actions.push(...step.actions);
  }
  return actions;
};

const at = (
  kind: PointerInput['kind'],
  x: number,
  y: number,
  more: Partial<PointerInput> = {}
): PointerInput => ({ kind, x, y, pointer: 1, ...more });

const dragged = (more: Partial<Extract<GestureAction, { kind: 'drag' }>>): GestureAction => ({
  kind: 'drag',
  from: { x: 0, y: 0 },
  at: { x: 0, y: 0 },
  dx: 0,
  dy: 0,
  begins: true,
  button: 0,
  touch: false,
  ...more
});

describe('gestures on the sheet', () => {
  it('hovers while nothing is pressed', () => {
    expect(run(at('move', 5, 6))).toEqual([{ kind: 'hover', at: { x: 5, y: 6 } }]);
  });

  it('taps where a hand only trembled', () => {
    expect(run(at('down', 10, 10), at('move', 12, 11), at('up', 12, 11))).toEqual([
      { kind: 'tap', at: { x: 12, y: 11 }, touch: false }
    ]);
  });

  it('lets a finger tremble more than a mouse', () => {
    const finger = { touch: true };
    expect(run(at('down', 10, 10, finger), at('move', 18, 10, finger), at('up', 18, 10))).toEqual([
      { kind: 'tap', at: { x: 18, y: 10 }, touch: true }
    ]);
    expect(run(at('down', 10, 10), at('move', 18, 10), at('up', 18, 10))).toEqual([
      dragged({ from: { x: 10, y: 10 }, at: { x: 18, y: 10 }, dx: 8 }),
      { kind: 'drop', at: { x: 18, y: 10 } }
    ]);
  });

  it('drags with one pointer, and does not tap after a drag that came back', () => {
    expect(
      run(at('down', 0, 0), at('move', 30, 0), at('move', 0, 0), at('up', 0, 0)).map(
        ({ kind }) => kind
      )
    ).toEqual(['drag', 'drag', 'drop']);
  });

  it('drags with the middle button, and does not tap with it', () => {
    expect(run(at('down', 0, 0, { button: 1 }), at('up', 0, 0))).toEqual([]);
    expect(run(at('down', 0, 0, { button: 1 }), at('move', 3, 4))).toEqual([
      dragged({ at: { x: 3, y: 4 }, dx: 3, dy: 4, button: 1 })
    ]);
  });

  it('zooms by the spread of two fingers, about the middle between them', () => {
    const actions = run(
      at('down', 100, 100),
      at('down', 200, 100, { pointer: 2 }),
      at('move', 300, 100, { pointer: 2 })
    );
    expect(actions).toEqual([
      { kind: 'pan', dx: 50, dy: 0 },
      { kind: 'zoom', factor: 2, at: { x: 200, y: 100 } }
    ]);
  });

  it('gives a drag up when a second finger comes down, or the system takes the pointer', () => {
    const drag = [at('down', 0, 0), at('move', 30, 0)];
    const second = run(...drag, at('down', 90, 0, { pointer: 2 }));
    expect(second.map(({ kind }) => kind)).toEqual(['drag', 'give-up']);
    const taken = run(...drag, at('cancel', 30, 0));
    expect(taken.map(({ kind }) => kind)).toEqual(['drag', 'give-up']);
  });

  it('does not tap when two fingers are lifted', () => {
    const actions = run(
      at('down', 100, 100),
      at('down', 200, 100, { pointer: 2 }),
      at('up', 200, 100, { pointer: 2 }),
      at('up', 100, 100)
    );
    expect(actions).toEqual([]);
  });

  it('forgets a press that was cancelled', () => {
    expect(run(at('down', 10, 10), at('cancel', 10, 10), at('move', 20, 20))).toEqual([
      { kind: 'hover', at: { x: 20, y: 20 } }
    ]);
  });

  it('turns a wheel into a factor: up is in, and a turn back undoes it', () => {
    expect(wheelFactor(-100, 0, false)).toBeGreaterThan(1);
    expect(wheelFactor(100, 0, false) * wheelFactor(-100, 0, false)).toBeCloseTo(1, 12);
    expect(wheelFactor(3, 1, false)).toBeCloseTo(wheelFactor(48, 0, false), 12);
  });
});
