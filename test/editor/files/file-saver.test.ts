// A chassis goes out with its pictures, back to its own file where the browser can, and a save that breaks leaves
// what was there.
import { openDocument, saveDocument, type ChassisDocument } from '#document/index.ts';
import type { FileHandle, FilePlace } from '#editor/files/file-place.ts';
import { FileSaver } from '#editor/files/file-saver.ts';
import { createPagePictures, readChassisZip } from '#storage/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../../helpers/chassis.ts';

const plain = chassis('Bench set')
  .unit('Main', { size: [300, 200] })
  .build();
const png = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1);

const withPhoto = (hash: string): ChassisDocument => {
  const [unit = ''] = Object.keys(plain.units);
  const picture = { hash, type: 'image/png', width: 2, height: 2 } as const;
  const photo = { id: 'f1', order: 'a0', unit, name: 'Below', picture, face: 'below' } as const;
  return { ...plain, photos: { f1: photo } };
};

/** A file on a disk of its own: what is written takes its place on close. */
const diskFile = (name: string) => {
  const disk = { name, content: new Uint8Array(), fault: null as string | null, writes: 0 };
  const handle = {
    name,
    createWritable: async () => {
      let written = new Uint8Array();
      return {
        write: async (bytes: Uint8Array<ArrayBuffer>) => {
          if (disk.fault !== null) throw new Error(disk.fault);
          written = bytes;
        },
        abort: async () => undefined,
        close: async () => {
          disk.content = written;
          disk.writes += 1;
        }
      };
    }
  } as unknown as FileHandle;
  return { disk, place: { name, handle } satisfies FilePlace };
};

const buildSaver = (places: (FilePlace | 'none' | null)[]) => {
  const asked: string[] = [];
  const downloads: { name: string; type: string; content: string | Uint8Array }[] = [];
  const pictures = createPagePictures();
  const saver = new FileSaver(
    {
      choosePlace: async (name) => {
        asked.push(name);
        return places.shift() ?? null;
      },
      download: (name, type, content) => downloads.push({ name, type, content })
    },
    pictures
  );
  return { saver, asked, downloads, pictures };
};
const textOf = (bytes: Uint8Array | string): string =>
  typeof bytes === 'string' ? bytes : new TextDecoder().decode(bytes);

describe('a chassis without pictures', () => {
  it('is downloaded as text where the browser can do no more', async () => {
    const { saver, downloads } = buildSaver(['none']);
    expect(await saver.save(plain)).toEqual({
      isSaved: true,
      words: 'bench-set.chassis.json saved'
    });
    expect(downloads.map(({ name, type }) => [name, type])).toEqual([
      ['bench-set.chassis.json', 'application/json']
    ]);
    expect(textOf(downloads[0]?.content ?? '')).toBe(saveDocument(plain));
  });

  it('is saved back to the same file from then on', async () => {
    const { disk, place } = diskFile('mine.chassis.json');
    const { saver, asked } = buildSaver([place]);
    await saver.save(plain);
    const edited = { ...plain, identity: { ...plain.identity, title: 'Renamed' } };
    expect((await saver.save(edited)).words).toBe('mine.chassis.json saved');
    expect(asked).toEqual(['bench-set.chassis.json']);
    expect(textOf(disk.content)).toBe(saveDocument(edited));
  });

  it('is saved back to the file it came from', async () => {
    const { disk, place } = diskFile('mine.chassis.json');
    const { saver, asked } = buildSaver([]);
    saver.cameFrom(plain, place);
    await saver.save(plain);
    expect([asked, disk.writes]).toEqual([[], 1]);
  });

  it('is not saved where no place was chosen, and says so', async () => {
    const { saver, downloads } = buildSaver([null]);
    expect(await saver.save(plain)).toEqual({
      isSaved: false,
      words: 'not saved: no place was chosen'
    });
    expect(downloads).toEqual([]);
  });
});

describe('a file of an earlier visit', () => {
  it('is saved back to, and asked for again where the browser forgot it', async () => {
    const { disk, place } = diskFile('mine.chassis.json');
    const kept = new Map<string, unknown>();
    const places = {
      keepPlace: async (id: string, handle: unknown) => void kept.set(id, handle),
      place: async (id: string) => kept.get(id) ?? null
    };
    const asked: string[] = [];
    const visit = (store: typeof places) =>
      new FileSaver(
        {
          choosePlace: async (name) => {
            asked.push(name);
            return place;
          },
          download: () => undefined
        },
        createPagePictures(),
        store
      );
    await visit(places).save(plain);
    await visit(places).save(plain);
    expect([asked.length, disk.writes]).toEqual([1, 2]);
    kept.set(plain.id, 'no handle');
    await visit(places).save(plain);
    const broken = (): Promise<never> => Promise.reject(new Error('no store'));
    await visit({ keepPlace: broken, place: broken }).save(plain);
    expect([asked.length, disk.writes]).toEqual([3, 4]);
  });
});

describe('a save that breaks', () => {
  it('leaves the former file, says why, and asks for another place next time', async () => {
    const { disk, place } = diskFile('mine.chassis.json');
    const second = diskFile('other.chassis.json');
    const { saver } = buildSaver([place, second.place]);
    await saver.save(plain);
    disk.fault = 'the disk is full';
    const outcome = await saver.save({ ...plain, id: plain.id });
    expect(outcome.isSaved).toBe(false);
    expect(outcome.words).toContain('what was in it is still there: the disk is full');
    expect(textOf(disk.content)).toBe(saveDocument(plain));
    expect((await saver.save(plain)).words).toBe('other.chassis.json saved');
  });

  it('is one that the person did not allow', async () => {
    const { place } = diskFile('mine.chassis.json');
    const denied = { requestPermission: async () => 'denied' as const };
    const { saver } = buildSaver([]);
    saver.cameFrom(plain, { ...place, handle: { ...place.handle, ...denied } as FileHandle });
    expect((await saver.save(plain)).words).toContain('was told not to change this file');
  });
});

describe('a chassis with pictures', () => {
  it('goes out as a zip with them, and as text where that is wanted', async () => {
    const { saver, downloads, pictures } = buildSaver(['none', 'none']);
    const document = withPhoto(await pictures.keep(png, 'image/png'));
    await saver.save(document);
    await saver.save(document, { bare: true });
    expect(downloads.map(({ name }) => name)).toEqual([
      'bench-set.chassis.zip',
      'bench-set.chassis.json'
    ]);
    const reading = readChassisZip(downloads[0]?.content as Uint8Array, 'x');
    if (!reading.ok) throw new Error('the zip does not open');
    expect([...reading.pictures.values()].map(({ bytes }) => bytes)).toEqual([png]);
    const back = openDocument(textOf(reading.documents[0]?.bytes ?? ''), 'x');
    expect(back.ok && back.document).toEqual(document);
  });

  it('asks for another place where its file is one of text', async () => {
    const text = diskFile('mine.chassis.json');
    const zip = diskFile('mine.chassis.zip');
    const { saver, asked, pictures } = buildSaver([zip.place]);
    saver.cameFrom(plain, text.place);
    await saver.save(withPhoto(await pictures.keep(png, 'image/png')));
    expect(asked).toEqual(['bench-set.chassis.zip']);
    expect([text.disk.writes, zip.disk.writes]).toEqual([0, 1]);
  });

  it('says which picture is missing from the file', async () => {
    const { saver } = buildSaver(['none']);
    const { words } = await saver.save(withPhoto('0'.repeat(64)));
    expect(words).toBe(
      'bench-set.chassis.zip saved, but the picture of “Below” is missing: its place is kept, add it again'
    );
  });
});
