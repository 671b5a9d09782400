// Pictures beside the documents: what is kept comes back byte for byte under its hash, nothing that is in use is
// let go, and a browser that keeps nothing loses nothing while the page is open.
import 'fake-indexeddb/auto';
import { hashOfPicture, saveDocument } from '#document/index.ts';
import {
  createBrowserPictures,
  createBrowserStore,
  createPagePictures,
  createSafePictures,
  StoreFailure,
  type PictureStore
} from '#storage/index.ts';
import { createHash } from 'node:crypto';
import { openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const bytesOf = (...values: number[]): Uint8Array => Uint8Array.from(values);
const dayMs = 24 * 60 * 60_000;
let turn = 0;
const freshName = (): string => `pictures ${turn++}`;
afterEach(() => {
  vi.restoreAllMocks();
});

describe('the hash of a picture', () => {
  it('is that of another library', () => {
    // Reference: OpenSSL by way of node:crypto.
    for (const bytes of [bytesOf(), bytesOf(1, 2, 3), new Uint8Array(100_000).fill(7)]) {
      expect(hashOfPicture(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});

describe.each<[string, () => PictureStore]>([
  ['in the browser', () => createBrowserPictures(() => 0, freshName())],
  ['in the page', createPagePictures],
  [
    'safe',
    () =>
      createSafePictures(
        createBrowserPictures(() => 0, freshName()),
        () => undefined
      )
  ]
])('pictures %s', (_name, make) => {
  it('come back byte for byte, under their hash', async () => {
    const pictures = make();
    const bytes = bytesOf(0x89, 0x50, 0x4e, 0x47);
    const hash = await pictures.keep(bytes, 'image/png');
    expect(hash).toBe(hashOfPicture(bytes));
    expect(await pictures.keep(bytes, 'image/png')).toBe(hash);
    expect(await pictures.has(hash)).toBe(true);
    expect(await pictures.read(hash)).toEqual({ bytes, type: 'image/png' });
    expect(await pictures.has('0'.repeat(64))).toBe(false);
    expect(await pictures.read('0'.repeat(64))).toBeNull();
  });

  it('are refused where there is nothing in them, or too much', async () => {
    const pictures = make();
    await expect(pictures.keep(bytesOf(), 'image/png')).rejects.toThrow('the picture is empty');
    const large = pictures.keep(new Uint8Array(32 * 1024 * 1024 + 1), 'image/png');
    await expect(large).rejects.toThrow('33 MB and the most is 32 MB');
    await expect(large).rejects.toBeInstanceOf(StoreFailure);
  });
});

describe('pictures that no document shows', () => {
  it('are let go a day later, and those in use are not', async () => {
    let now = 0;
    const pictures = createBrowserPictures(() => now, freshName());
    const [used, unused] = [
      await pictures.keep(bytesOf(1), 'image/png'),
      await pictures.keep(bytesOf(2), 'image/webp')
    ];
    now = dayMs - 1;
    expect(await pictures.forgetUnused([used])).toBe(0);
    // Added again: the document that shows it may not have been written yet.
    const again = await pictures.keep(bytesOf(3), 'image/jpeg');
    now = dayMs;
    expect(await pictures.forgetUnused([used])).toBe(1);
    expect(await pictures.has(used)).toBe(true);
    expect(await pictures.has(again)).toBe(true);
    expect(await pictures.has(unused)).toBe(false);
  });

  it('stay where the clock was set back', async () => {
    let now = 10 * dayMs;
    const pictures = createBrowserPictures(() => now, freshName());
    await pictures.keep(bytesOf(1), 'image/png');
    now = 0;
    expect(await pictures.forgetUnused([])).toBe(0);
  });
});

describe('a store of the first version', () => {
  it('is brought up with all that was in it', async () => {
    const name = freshName();
    const document = chassis('Old').tube('V1', '6CG7').build();
    const old = await openDB(name, 1, {
      upgrade: (database) => {
        database.createObjectStore('entries', { keyPath: 'id' });
        database.createObjectStore('texts');
        database.createObjectStore('revisions', { keyPath: ['id', 'savedAt'] });
      }
    });
    const entry = { id: document.id, title: 'Old', savedAt: 5, revision: 'x' };
    await old.put('entries', entry);
    await old.put('texts', saveDocument(document), document.id);
    old.close();
    const hash = await createBrowserPictures(() => 0, name).keep(bytesOf(1), 'image/png');
    expect(hash).toBe(hashOfPicture(bytesOf(1)));
    const store = createBrowserStore(name);
    expect((await store.list()).map(({ title }) => title)).toEqual(['Old']);
    const back = await store.load(document.id);
    expect(back && saveDocument(back)).toBe(saveDocument(document));
  });
});

describe('a browser that keeps nothing', () => {
  const failing = (name: string): PictureStore => {
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('no', name);
    });
    return createBrowserPictures(() => 0, freshName());
  };

  it.each([
    ['QuotaExceededError', 'full'],
    ['SecurityError', 'not allowed']
  ])('says why on %s', async (name, kind) => {
    const work = failing(name).keep(bytesOf(1), 'image/png');
    await expect(work).rejects.toMatchObject({ name: 'StoreFailure', kind });
  });

  it('loses no picture while the page is open, tells why, and takes it at the next try', async () => {
    const told: StoreFailure[] = [];
    const lasting = failing('QuotaExceededError');
    const pictures = createSafePictures(lasting, (failure) => told.push(failure));
    const hash = await pictures.keep(bytesOf(1), 'image/png');
    expect(told.map(({ kind }) => kind)).toEqual(['full']);
    expect(await lasting.has(hash)).toBe(false);
    expect(await pictures.has(hash)).toBe(true);
    expect((await pictures.read(hash))?.bytes).toEqual(bytesOf(1));
    vi.restoreAllMocks();
    expect(await pictures.keep(bytesOf(1), 'image/png')).toBe(hash);
    expect(await lasting.has(hash)).toBe(true);
  });

  it('does so where there is no database at all', async () => {
    const { indexedDB } = globalThis;
    Reflect.deleteProperty(globalThis, 'indexedDB');
    try {
      const told: string[] = [];
      const lasting = createBrowserPictures(() => 0, freshName());
      const pictures = createSafePictures(lasting, ({ message }) => told.push(message));
      const hash = await pictures.keep(bytesOf(1), 'image/png');
      expect(told).toEqual(['this browser has no store for pages: save the chassis as a file']);
      expect(await pictures.has(hash)).toBe(true);
      expect(await pictures.has('0'.repeat(64))).toBe(false);
    } finally {
      globalThis.indexedDB = indexedDB;
    }
  });
});
