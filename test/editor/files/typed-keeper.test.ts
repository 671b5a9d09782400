// What is typed and not taken yet: written soon, given back to the same chassis, and never to another.
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { TypedKeeper, typedPauseMs } from '#editor/files/typed-keeper.ts';
import { readTypedCells } from '#editor/schedule/typed-cells.ts';
import { createTypedStore, type TypedStore } from '#storage/index.ts';

let time: number;
let timers: { at: number; run: () => void }[];
const later = (run: () => void, ms: number): (() => void) => {
  const timer = { at: time + ms, run };
  timers.push(timer);
  return () => void (timers = timers.filter((one) => one !== timer));
};
const pass = (ms: number): void => {
  time += ms;
  const due = timers.filter(({ at }) => at <= time);
  timers = timers.filter(({ at }) => at > time);
  for (const { run } of due) run();
};

let store: TypedStore;
let count = 0;
beforeEach(() => {
  time = 0;
  timers = [];
  store = createTypedStore(`typed-${(count += 1)}`);
});

describe('typing that is kept', () => {
  it('is written a quarter of a second after the first letter, however fast the others come', async () => {
    const keeper = new TypedKeeper({ store, later });
    expect(await keeper.open('a')).toBeNull();
    keeper.keep('a', { text: 'y' });
    pass(typedPauseMs - 1);
    keeper.keep('a', { text: 'ye' });
    pass(1);
    await keeper.flush();
    // Killed here: another page opens the same chassis.
    expect(await new TypedKeeper({ store, later }).open('a')).toEqual({ text: 'ye' });
  });

  it('is gone once it was taken, and belongs to one chassis alone', async () => {
    const keeper = new TypedKeeper({ store, later });
    await keeper.open('a');
    keeper.keep('a', { text: 'yel' });
    expect(await keeper.open('b')).toBeNull();
    keeper.keep('a', { text: 'for another' });
    expect(await keeper.open('a')).toEqual({ text: 'yel' });
    keeper.keep('a', null);
    await keeper.flush();
    expect(await store.typed('a')).toBeNull();
  });

  it('does not wipe what is kept before it was handed out', async () => {
    await store.keepTyped('a', { text: 'yel' });
    const keeper = new TypedKeeper({ store, later });
    const opening = keeper.open('a');
    keeper.keep('a', null);
    expect(await opening).toEqual({ text: 'yel' });
    await keeper.flush();
    expect(await store.typed('a')).toEqual({ text: 'yel' });
  });

  it('asks nothing of the store while nothing is typed, and goes on where it fails', async () => {
    let asked = 0;
    const keeper = new TypedKeeper({
      store: {
        typed: () => Promise.reject(new Error('no store')),
        keepTyped: () => {
          asked += 1;
          return Promise.reject(new Error('full'));
        }
      },
      later
    });
    expect(await keeper.open('a')).toBeNull();
    keeper.keep('a', null);
    expect(timers).toEqual([]);
    keeper.keep('a', { text: 'x' });
    await keeper.flush();
    keeper.keep('a', { text: 'xy' });
    await keeper.flush();
    expect(asked).toBe(2);
  });
});

describe('what was kept, read again', () => {
  const hasRow = (row: string): boolean => row === 'w1' || row === 'new';
  it.each<[string, unknown, ReturnType<typeof readTypedCells>]>([
    ['nothing', null, null],
    ['something else', ['open'], null],
    ['a row that is gone', { open: { row: 'w9', column: 'from', text: 'V1' }, bad: {} }, null],
    [
      'an open field, and a cell of a wire that is gone',
      {
        open: { row: 'new', column: 'from', text: 'V1-' },
        bad: { 'w1 carries': { text: 'lots', why: 'no number' }, 'w9 to': { text: '?', why: '' } }
      },
      {
        open: { row: 'new', column: 'from', text: 'V1-' },
        bad: { 'w1 carries': { text: 'lots', why: 'no number' } }
      }
    ],
    ['damaged fields', { open: { row: 1 }, bad: { 'w1 to': 'x' } }, null]
  ])('%s', (_, kept, expected) => {
    expect(readTypedCells(kept, hasRow)).toEqual(expected);
  });
});
