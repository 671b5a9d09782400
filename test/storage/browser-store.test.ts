// Chassis kept in the browser: what is saved comes back, two windows do not overwrite each other, earlier
// states can be had again, and every failure says what to do. The browser's database is stood in for.
import 'fake-indexeddb/auto';
import { applyEdit, saveDocument, setWireFields, type ChassisDocument } from '#document/index.ts';
import {
  askToPersist,
  createBesideStore,
  createBrowserStore,
  StoreFailure,
  type BrowserStore
} from '#storage/index.ts';
import { toStoreFailure } from '#storage/store-failure.ts';
import { revisionPauseMs } from '#storage/thin-revisions.ts';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const set = (title = 'Bench set'): ChassisDocument =>
  chassis(title).tube('V1', '6CG7').wire(1, 'V1-5', null, { awg: 22 }).build();
const withNotes = (document: ChassisDocument, notes: string): ChassisDocument => {
  const result = applyEdit(document, setWireFields('w1', { notes }));
  if (!result.ok) throw new Error(result.problem);
  return result.document;
};
const failureOf = async (work: Promise<unknown>): Promise<StoreFailure> => {
  const error: unknown = await work.then(
    () => new Error('it did not fail'),
    (reason: unknown) => reason
  );
  expect(error).toBeInstanceOf(StoreFailure);
  return error as StoreFailure;
};

let name = '';
let turn = 0;
let store: BrowserStore;
beforeEach(() => {
  name = `test ${turn++}`;
  store = createBrowserStore(name);
});
afterEach(() => {
  store.close();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('the store', () => {
  it('gives back what was kept, on a later visit too', async () => {
    await store.save(set(), 1000);
    await store.save(withNotes(set(), 'changed'), 2000);
    store.close();
    const later = createBrowserStore(name);
    const back = await later.load(set().id);
    expect(back && saveDocument(back)).toBe(saveDocument(withNotes(set(), 'changed')));
    expect(await later.load('dnothing')).toBeNull();
    later.close();
  });

  it('lists what it keeps, the latest first, and forgets what is removed', async () => {
    await store.save(set('First'), 1000);
    await store.save(set('Second'), 2000);
    const states = { found: 1, tagged: 0, removed: 0, fitted: 0, checked: 0 };
    expect(await store.list()).toEqual([
      { id: 'dsecond', title: 'Second', savedAt: 2000, states },
      { id: 'dfirst', title: 'First', savedAt: 1000, states }
    ]);
    await store.save(withNotes(set('First'), 'x'), 3000 + revisionPauseMs);
    const beside = createBesideStore(name);
    await beside.keepPreview('dfirst', 'small');
    await beside.keepLayout('dfirst', 'k', 'laid out');
    await store.forget('dfirst');
    expect((await store.list()).map(({ id }) => id)).toEqual(['dsecond']);
    expect(await store.load('dfirst')).toBeNull();
    expect(await store.states('dfirst')).toEqual([]);
    expect((await beside.previews()).size).toBe(0);
    expect(await beside.layout('dfirst', 'k')).toBeNull();
  });

  it('puts a chassis that was removed back, with its earlier states', async () => {
    await store.save(set('First'), 1000);
    await store.save(withNotes(set('First'), 'x'), 2000);
    await store.remove('dfirst', 3000);
    expect(await store.list()).toEqual([]);
    expect((await store.removed()).map(({ title }) => title)).toEqual(['First']);
    await store.putBack('dfirst');
    expect(await store.removed()).toEqual([]);
    expect((await store.load('dfirst'))?.wires['w1']?.notes).toBe('x');
    expect((await store.states('dfirst')).map(({ savedAt }) => savedAt)).toEqual([2000, 1000]);
  });

  it('puts the present aside in any case where that is asked for', async () => {
    await store.save(set(), 0);
    await store.save(withNotes(set(), 'one'), 1000);
    await store.save(withNotes(set(), 'two'), 2000);
    expect((await store.states(set().id)).map(({ savedAt }) => savedAt)).toEqual([2000, 0]);
    await store.save(set(), 3000, { setAside: true });
    expect((await store.states(set().id)).map(({ savedAt }) => savedAt)).toEqual([3000, 2000, 0]);
    expect((await store.loadRevision(set().id, 2000))?.wires['w1']?.notes).toBe('two');
  });

  it('knows the pictures of every state that it keeps', async () => {
    const [unit = ''] = Object.keys(set().units);
    const withPhoto = (hash: string): ChassisDocument => {
      const picture = { hash, type: 'image/png', width: 2, height: 2 } as const;
      const photo = { id: 'f1', order: 'a0', unit, name: 'Below', picture, face: 'below' } as const;
      return { ...set(), photos: { f1: photo } };
    };
    const [former, present] = ['a'.repeat(64), 'b'.repeat(64)];
    await store.save(withPhoto(former), 0);
    await store.save(withPhoto(present), 1000);
    expect(await store.picturesInUse()).toEqual(new Set([former, present]));
  });

  it('puts earlier states aside now and then', async () => {
    const state = (count: number) => withNotes(set(), `state ${count}`);
    await store.save(state(0), 0);
    await store.save(state(1), 1000);
    await store.save(state(2), 2000);
    await store.save(state(3), revisionPauseMs + 3000);
    expect(await store.states(set().id)).toEqual([
      { savedAt: revisionPauseMs + 3000, changes: ['wire 1 changed: notes'] },
      { savedAt: 2000, changes: ['wire 1 changed: notes'] },
      { savedAt: 0, changes: [] }
    ]);
    const back = await store.loadRevision(set().id, 2000);
    expect(back?.wires['w1']?.notes).toBe('state 2');
    expect(await store.loadRevision(set().id, 5)).toBeNull();
  });

  it('goes on putting states aside after the clock was set back, and no more than before', async () => {
    const state = (count: number) => withNotes(set(), `state ${count}`);
    const late = 100 * revisionPauseMs;
    await store.save(state(0), late);
    await store.save(state(1), late + 1000);
    for (let turn = 0; turn < 20; turn++) await store.save(state(2 + turn), turn * 1000);
    await store.save(state(50), revisionPauseMs + 20_000);
    const times = (await store.states(set().id)).map(({ savedAt }) => savedAt);
    // What was there before, the state when the clock was set, the first one after, the one five minutes on.
    expect(times.sort((a, b) => a - b)).toEqual([
      0,
      19_000,
      revisionPauseMs + 20_000,
      late,
      late + 1000
    ]);
    expect((await store.load(set().id))?.wires['w1']?.notes).toBe('state 50');
  });

  it('makes no revision of a document that did not change', async () => {
    await store.save(set(), 0);
    await store.save(set(), 10 * revisionPauseMs);
    expect(await store.states(set().id)).toHaveLength(1);
    expect((await store.list())[0]?.savedAt).toBe(10 * revisionPauseMs);
  });

  it('does not overwrite what another window kept since', async () => {
    const other = createBrowserStore(name);
    await store.save(set(), 0);
    await other.load(set().id);
    await other.save(withNotes(set(), 'from the other'), 1000);
    const failure = await failureOf(store.save(withNotes(set(), 'from this one'), 2000));
    expect(failure.kind).toBe('changed elsewhere');
    expect((await other.load(set().id))?.wires['w1']?.notes).toBe('from the other');
    // Once it has seen the other's state, this window may go on from there.
    await store.load(set().id);
    await store.save(withNotes(set(), 'from this one'), 3000);
    expect((await other.load(set().id))?.wires['w1']?.notes).toBe('from this one');
    other.close();
  });

  it('puts aside what it kept of a document whose file is opened anew', async () => {
    await store.save(withNotes(set(), 'kept last week'), 0);
    store.close();
    const later = createBrowserStore(name);
    await later.save(set(), 1000);
    expect((await later.loadRevision(set().id, 0))?.wires['w1']?.notes).toBe('kept last week');
    later.close();
  });

  it('says so where what it kept does not open', async () => {
    await store.save(set(), 0);
    const database = await openDB(name);
    await database.put('texts', '{"format":', set().id);
    database.close();
    const failure = await failureOf(store.load(set().id));
    expect(failure.kind).toBe('unreadable');
    expect(failure.message).toContain('Bench set: format (line 1, column 11)');
  });
});

describe('what is kept beside a chassis', () => {
  it('comes back, and a layout only for what it was made from', async () => {
    const beside = createBesideStore(name);
    await beside.keepPreview('da', { width: 10 });
    await beside.keepLayout('da', 'as it was', { lines: [1, 2] });
    expect(await beside.previews()).toEqual(new Map([['da', { width: 10 }]]));
    expect(await beside.layout('da', 'as it was')).toEqual({ lines: [1, 2] });
    expect(await beside.layout('da', 'as it is now')).toBeNull();
    expect(await beside.layout('db', 'as it was')).toBeNull();
  });
});

describe('a failure', () => {
  it('is told where the browser has no store', async () => {
    const { indexedDB } = globalThis;
    Reflect.deleteProperty(globalThis, 'indexedDB');
    try {
      const failure = await failureOf(createBrowserStore('none').save(set(), 0));
      expect(failure.kind).toBe('not allowed');
      expect(failure.message).toContain('save the chassis as a file');
    } finally {
      globalThis.indexedDB = indexedDB;
    }
  });

  it('keeps nothing by halves where the room runs out', async () => {
    await store.save(set(), 0);
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...args
    ) {
      if (this.name === 'texts') throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, args);
    });
    const failure = await failureOf(store.save(withNotes(set('Bench set'), 'more'), 9_000_000));
    expect(failure.kind).toBe('full');
    vi.restoreAllMocks();
    expect((await store.list())[0]?.savedAt).toBe(0);
    expect((await store.load(set().id))?.wires['w1']).not.toHaveProperty('notes');
  });

  it('is told where a newer version of the store is there', async () => {
    (await openDB(name, 99)).close();
    expect((await failureOf(store.list())).kind).toBe('newer store');
  });

  // Names of errors: Indexed Database API 3.0 (W3C), section on exceptions.
  it.each([
    ['QuotaExceededError', 'full'],
    ['SecurityError', 'not allowed'],
    ['UnknownError', 'failed'],
    ['InvalidStateError', 'failed']
  ])('called %s is "%s" and keeps its cause', (error, kind) => {
    const cause = new DOMException('x', error);
    expect(toStoreFailure(cause)).toMatchObject({ kind, cause });
  });
});

describe('asking to keep for good', () => {
  it('is answered by the browser, and by no where it cannot', async () => {
    vi.stubGlobal('navigator', { storage: { persist: () => Promise.resolve(true) } });
    expect(await askToPersist()).toBe(true);
    vi.stubGlobal('navigator', { storage: { persist: () => Promise.reject(new Error('no')) } });
    expect(await askToPersist()).toBe(false);
    vi.stubGlobal('navigator', {});
    expect(await askToPersist()).toBe(false);
  });
});
