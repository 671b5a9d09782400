// Two windows on one browser's store: the one that follows sees every edit and changes nothing, and goes on from the
// last edit when it takes over.
import 'fake-indexeddb/auto';
import { applyEdit, setWireFields, type ChassisDocument } from '#document/index.ts';
import { KeptChassis } from '#editor/files/kept-chassis.svelte.ts';
import { KeptList } from '#editor/files/kept-list.svelte.ts';
import { createBesideStore, createBrowserPictures, createBrowserStore } from '#storage/index.ts';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { chassis } from '../../helpers/chassis.ts';
import { BrowserWindows } from './browser-windows.ts';

const set = (title = 'Bench set'): ChassisDocument =>
  chassis(title).tube('V1', '6CG7').wire(1, 'V1-5', null).build();
const withNotes = (document: ChassisDocument, notes: string): ChassisDocument => {
  const result = applyEdit(document, setWireFields('w1', { notes }));
  if (!result.ok) throw new Error(result.problem);
  return result.document;
};
/** Until the other window has heard of it. */
const heard = (check: () => void | Promise<void>): Promise<void> =>
  vi.waitFor(check, { timeout: 20_000 });

let turn = 0;
let name = '';
let windows: BrowserWindows;
beforeEach(() => {
  name = `windows ${turn++}`;
  windows = new BrowserWindows();
});

const openWindow = (self: string) => {
  const inHand: string[] = [];
  const store = createBrowserStore(name);
  const shown: ChassisDocument[] = [];
  const told: string[] = [];
  const kept = new KeptChassis({
    store,
    clock: {
      now: () => turn++,
      later: (run) => {
        const timer = setTimeout(run, 0);
        return () => clearTimeout(timer);
      }
    },
    seatHost: windows.open(self),
    show: (document) => {
      shown.push(document);
      kept.keep(document);
    },
    askToPersist: async () => true
  });
  let ids = 0;
  const list = new KeptList({
    store,
    beside: createBesideStore(name),
    kept,
    pictures: createBrowserPictures(() => Number.MAX_SAFE_INTEGER, name),
    picturesInHand: () => inHand,
    now: () => turn++,
    makeId: (kind) => `d${kind}${self}${ids++}`,
    tell: (words) => told.push(words)
  });
  return { kept, list, store, shown, told, inHand };
};
const notesOf = (document: ChassisDocument | null | undefined): unknown =>
  document?.wires['w1']?.notes;

describe('a second window on a chassis', () => {
  it('follows, writes nothing, and goes on from the last edit when it takes over', async () => {
    const [first, second] = [openWindow('1'), openWindow('2')];
    first.kept.follow(set());
    await first.kept.flush();
    second.kept.follow(set());
    await second.kept.flush();
    expect([first.kept.isFollowing, second.kept.isFollowing]).toEqual([false, true]);
    first.kept.keep(withNotes(set(), 'one'));
    await heard(() => expect(notesOf(second.shown.at(-1))).toBe('one'));
    second.kept.keep(withNotes(set(), 'not to be written'));
    await second.kept.flush();
    expect(notesOf(await first.store.load(set().id))).toBe('one');
    // An edit that still waits in the first is not lost by the hand-over.
    first.kept.keep(withNotes(set(), 'two'));
    await second.kept.takeOver();
    await heard(() => {
      expect(notesOf(second.shown.at(-1))).toBe('two');
      expect([first.kept.isFollowing, second.kept.isFollowing]).toEqual([true, false]);
    });
    second.kept.keep(withNotes(set(), 'three'));
    await heard(() => expect(notesOf(first.shown.at(-1))).toBe('three'));
    expect(second.kept.problem).toBeNull();
  });
});

describe('the list', () => {
  it('renames, doubles, removes and puts back', async () => {
    const { kept, list, told } = openWindow('1');
    kept.follow(set());
    await kept.flush();
    await list.refresh();
    const [entry] = list.entries;
    if (!entry) throw new Error('nothing is kept');
    await list.double(entry);
    const copy = list.entries.find(({ id }) => id !== entry.id);
    expect(copy?.title).toBe('Bench set, copy');
    if (!copy) throw new Error('no copy');
    await list.rename(copy, 'Second');
    expect(list.entries.map(({ title }) => title).sort()).toEqual(['Bench set', 'Second']);
    await list.remove({ ...copy, title: 'Second' });
    expect(list.entries.map(({ title }) => title)).toEqual(['Bench set']);
    await list.putBack(copy);
    expect(list.entries).toHaveLength(2);
    await list.remove(copy);
    await list.forget(copy);
    expect([list.entries.length, list.removed.length]).toEqual([1, 0]);
    expect(told).toContain('Second removed: it can be put back');
    expect(list.problem).toBeNull();
  });

  it('lets the pictures of a chassis go with it, unless they may still be wanted', async () => {
    const first = openWindow('1');
    first.kept.follow(set());
    await first.kept.flush();
    const pictures = createBrowserPictures(() => 0, name);
    const hashes = [
      await pictures.keep(Uint8Array.of(1), 'image/png'),
      await pictures.keep(Uint8Array.of(2), 'image/png')
    ] as const;
    first.inHand.push(hashes[0]);
    const gone = { id: 'dgone', title: 'Gone', savedAt: 0 };
    // With another window open nothing is let go: it may be about to show one.
    const second = openWindow('2');
    second.kept.follow(set('Other'));
    await second.kept.flush();
    await first.list.forget(gone);
    expect(await pictures.has(hashes[1])).toBe(true);
    second.kept.leave();
    await heard(async () => expect(await first.kept.isAlone()).toBe(true));
    await first.list.forget(gone);
    expect(await pictures.has(hashes[0])).toBe(true);
    expect(await pictures.has(hashes[1])).toBe(false);
  });

  it('leaves alone what is open in another window, and says so', async () => {
    const [first, second] = [openWindow('1'), openWindow('2')];
    first.kept.follow(set());
    await first.kept.flush();
    await second.list.refresh();
    const [entry] = second.list.entries;
    if (!entry) throw new Error('nothing is kept');
    await second.list.remove(entry);
    expect(second.list.entries).toHaveLength(1);
    expect(second.told.at(-1)).toContain('Bench set is open in another window');
  });

  it('takes an archive in: what is new, what is here already, and what says something else', async () => {
    const { kept, list, store } = openWindow('1');
    kept.follow(set('First'));
    await kept.flush();
    const other = withNotes(set('First'), 'from the archive');
    const notes = await list.takeIn([set('First'), other, set('Second')]);
    expect(notes).toEqual([
      'First is here already',
      'First is here in another state: the one in the file is kept beside it'
    ]);
    expect(list.entries.map(({ title }) => title).sort()).toEqual([
      'First',
      'First, from the file',
      'Second'
    ]);
    expect(notesOf(await store.load('dfirst'))).toBeUndefined();
    const all = await list.readAll();
    expect(all).toHaveLength(3);
  });

  it('goes back to an earlier state and keeps the present', async () => {
    const { kept, list } = openWindow('1');
    kept.follow(set());
    await kept.flush();
    kept.keep(withNotes(set(), 'one'));
    await kept.flush();
    kept.keep(withNotes(set(), 'two'));
    await kept.flush();
    const states = await list.states(set().id);
    expect(states).toHaveLength(2);
    const first = await list.loadState(set().id, states[1]?.savedAt ?? -1);
    if (first === null) throw new Error('no state');
    expect(await kept.keepInPlace(first)).toBe(true);
    kept.keep(first);
    await kept.flush();
    const after = await list.states(set().id);
    expect(after).toHaveLength(3);
    expect(notesOf(await list.loadState(set().id, after[1]?.savedAt ?? -1))).toBe('two');
  });
});
