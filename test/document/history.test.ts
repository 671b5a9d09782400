// Undo and redo are plain data, and edits of one thing in quick succession are one step.
import {
  applyEdit,
  applyPatches,
  emptyHistory,
  mergeWindowMs,
  movePart,
  pushEdit,
  redo,
  removeElement,
  sealHistory,
  setFound,
  undo,
  type ChassisDocument,
  type Edit,
  type History
} from '#document/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

interface State {
  readonly document: ChassisDocument;
  readonly history: History;
}
const start = (): State => ({
  document: chassis('Bench set').tube('V1', '6CG7').wire(12, 'V1-5', null, { awg: 22 }).build(),
  history: emptyHistory
});
const make = ({ document, history }: State, edit: Edit, time: number): State => {
  const result = applyEdit(document, edit);
  if (!result.ok) throw new Error(result.problem);
  return { document: result.document, history: pushEdit(history, edit, result, time) };
};

describe('the history', () => {
  it('makes one step of a drag, whose patches do not grow with its length', () => {
    let state = start();
    for (let move = 0; move < 200; move++) {
      state = make(state, movePart('pv1', { x: move, y: -move }), move * 16);
    }
    expect(state.history.past).toHaveLength(1);
    const [step] = state.history.past;
    expect(step!.patches.length).toBeLessThan(5);
    expect(step!.inverse.length).toBeLessThan(5);
    expect(step!.name).toBe('move part V1');
    expect(applyPatches(start().document, step!.patches)).toEqual(state.document);
    expect(undo(state.document, state.history)?.document).toEqual(start().document);
    const again = applyEdit(start().document, step!.edit);
    expect(again.ok && again.document).toEqual(state.document);
  });

  it('keeps apart what is apart in time, in field, or sealed', () => {
    const first = make(start(), setFound('w12', { awg: 20 }), 0);
    const steps = (state: State) => state.history.past.length;
    expect(steps(make(first, setFound('w12', { awg: 18 }), mergeWindowMs))).toBe(1);
    expect(steps(make(first, setFound('w12', { awg: 18 }), mergeWindowMs + 1))).toBe(2);
    expect(steps(make(first, setFound('w12', { colour: 'red' }), 1))).toBe(2);
    const sealed = { ...first, history: sealHistory(first.history) };
    expect(steps(make(sealed, setFound('w12', { awg: 18 }), 1))).toBe(2);
  });

  it('forgets what could be redone when something new is done, and does not merge into the past', () => {
    const first = make(start(), setFound('w12', { awg: 20 }), 0);
    const second = make(first, removeElement('part', 'pv1'), 1);
    const back = undo(second.document, second.history)!;
    expect(back.name).toBe('remove part V1');
    expect(redo(back.document, back.history)?.document).toEqual(second.document);
    const other = make(back, setFound('w12', { awg: 18 }), 2);
    expect(other.history.past.map(({ name }) => name)).toEqual([
      'change wire 12 gauge',
      'change wire 12 gauge'
    ]);
    expect(redo(other.document, other.history)).toBeUndefined();
  });

  it('keeps a long step of unlike edits flat, so that its edit still applies', () => {
    let { document, history } = start();
    for (let turn = 0; turn < 40; turn++) {
      const edit = turn % 2 ? setFound('w12', { awg: turn }) : movePart('pv1', { x: turn, y: 0 });
      const result = applyEdit(document, edit);
      if (!result.ok) throw new Error(result.problem);
      history = pushEdit(history, edit, result, turn, 'one gesture');
      document = result.document;
    }
    expect(history.past).toHaveLength(1);
    const again = applyEdit(start().document, history.past[0]!.edit);
    expect(again.ok && again.document).toEqual(document);
  });

  it('leaves an edit out that changed nothing', () => {
    expect(make(start(), setFound('w12', { awg: 22 }), 0).history).toBe(emptyHistory);
  });

  it('goes through JSON', () => {
    const state = make(
      make(start(), setFound('w12', { awg: 20 }), 0),
      removeElement('part', 'pv1'),
      1
    );
    const history = JSON.parse(JSON.stringify(state.history)) as History;
    const once = undo(state.document, history)!;
    expect(undo(once.document, once.history)!.document.wires).toEqual(start().document.wires);
    expect(undo(start().document, emptyHistory)).toBeUndefined();
  });
});
