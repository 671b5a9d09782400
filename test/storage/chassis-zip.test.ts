// Chassis with their pictures in one file: out and in again to the same bytes, and whatever is wrong with a zip is
// told before it is inflated.
import {
  hashOfPicture,
  openDocument,
  saveDocument,
  type ChassisDocument
} from '#document/index.ts';
import {
  buildChassisZip,
  missingPicturesNote,
  picturesOf,
  pictureTypeOf,
  readChassisZip,
  zipLimits,
  type StoredPicture,
  type ZipReading
} from '#storage/index.ts';
import fc from 'fast-check';
import { unzipSync, zipSync, type Zippable } from 'fflate';
import { readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { chassis } from '../helpers/chassis.ts';

const pngStart = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const pngOf = (...rest: number[]): Uint8Array => Uint8Array.from([...pngStart, ...rest]);
const plainSet = (): ChassisDocument => chassis('Bench set').tube('V1', '6CG7').build();
const textBytes = (document: ChassisDocument): Uint8Array =>
  new TextEncoder().encode(saveDocument(document));

/** The document with a picture of its own for each photo. */
const withPictures = (document: ChassisDocument, seed: number) => {
  const pictures = new Map<string, StoredPicture>();
  const photos = Object.fromEntries(
    Object.values(document.photos).map((photo, index) => {
      const bytes = pngOf(index, seed & 0xff, seed >>> 8);
      const hash = hashOfPicture(bytes);
      pictures.set(hash, { bytes, type: 'image/png' });
      return [photo.id, { ...photo, picture: { ...photo.picture, hash } }];
    })
  );
  return { document: { ...document, photos }, pictures };
};
const read = (bytes: Uint8Array): Extract<ZipReading, { ok: true }> => {
  const reading = readChassisZip(bytes, 'any.chassis.zip');
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading;
};
const problemOf = (bytes: Uint8Array): string => {
  const reading = readChassisZip(bytes, 'any.chassis.zip');
  if (reading.ok) throw new Error('it was taken');
  expect(reading.problems).toHaveLength(1);
  return reading.problems[0]?.wrong ?? '';
};
const opened = (bytes: Uint8Array): ChassisDocument => {
  const result = openDocument(new TextDecoder().decode(bytes), 'any');
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.document;
};

describe('any chassis with any pictures', () => {
  it('comes out of a zip as it went in, and zips to the same bytes', () => {
    fc.assert(
      fc.property(arbitraryDocument(), fc.nat(0xffff), (any, seed) => {
        const { document, pictures } = withPictures(any, seed);
        const zip = buildChassisZip([document], pictures);
        const { documents, pictures: back, notes } = read(zip);
        expect(documents.map(({ bytes }) => opened(bytes))).toEqual([document]);
        expect(back).toEqual(pictures);
        expect(notes).toEqual([]);
        const turned = new Map([...pictures].reverse());
        expect(buildChassisZip([document], turned)).toEqual(zip);
      }),
      { seed: 11, numRuns: 100 }
    );
  });

  it('is read the same by another reader', () => {
    const { document, pictures } = withPictures(
      { ...plainSet(), photos: opened(fixtureText()).photos },
      7
    );
    const files = unzipSync(buildChassisZip([document], pictures));
    const [hash] = [...pictures.keys()];
    expect(Object.keys(files)).toEqual(['bench-set.chassis.json', `pictures/${hash}.png`]);
    expect(files['bench-set.chassis.json']).toEqual(textBytes(document));
  });

  it('is one of many in an archive, and a picture of two is kept once', () => {
    const photos = opened(fixtureText()).photos;
    const { document, pictures } = withPictures({ ...plainSet(), photos }, 1);
    const second = { ...document, id: 'dsecond' };
    const unused = { bytes: pngOf(99), type: 'image/png' } as const;
    const all = new Map(pictures).set(hashOfPicture(unused.bytes), unused);
    const zip = buildChassisZip([second, document], all);
    expect(buildChassisZip([document, second], all)).toEqual(zip);
    const back = read(zip);
    expect(back.documents.map(({ name }) => name)).toEqual([
      'bench-set.chassis.json',
      'bench-set-2.chassis.json'
    ]);
    expect(back.documents.map(({ bytes }) => opened(bytes).id)).toEqual([document.id, 'dsecond']);
    expect([...back.pictures.keys()]).toEqual([...picturesOf(document)]);
  });
});

const fixture = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`zips/${name}.chassis.zip`, import.meta.url)));
const fixtureText = (): Uint8Array => {
  const [document] = read(fixture('by-python')).documents;
  if (!document) throw new Error('the fixture holds no document');
  return document.bytes;
};

describe('a zip that another program made', () => {
  // See zips/README.md; the hash by Python's hashlib.
  it.each(['by-info-zip', 'by-python'])('is read: %s', (name) => {
    const { documents, pictures, notes } = read(fixture(name));
    expect(documents.map((document) => opened(document.bytes).identity.title)).toEqual([
      'Bench set'
    ]);
    expect([...pictures.keys()]).toEqual([
      '2e201248f9d1da43cdbd481891ebfd3ff2b2f8b580a83d1c9fdda048b47ad9d1'
    ]);
    expect(notes).toEqual([]);
  });
});

/** Overwrites a field of the first header in the list of contents. */
const withField = (zip: Uint8Array, at: number, value: number, size: 2 | 4 = 4): Uint8Array => {
  const copy = zip.slice();
  const view = new DataView(copy.buffer);
  const header = copy.findIndex((_, index) => {
    return index + 4 <= copy.length && view.getUint32(index, true) === 0x02014b50;
  });
  if (size === 4) view.setUint32(header + at, value, true);
  else view.setUint16(header + at, value, true);
  return copy;
};
const zipOf = (files: Zippable): Uint8Array => zipSync(files, { mtime: new Date(1980, 0, 1) });
const plainZip = (): Uint8Array => buildChassisZip([plainSet()], new Map());

describe('a zip is refused', () => {
  it.each<[string, () => Uint8Array, string]>([
    ['cut off', () => plainZip().slice(0, -30), 'its end is missing'],
    ['nothing but a beginning', () => Uint8Array.of(0x50, 0x4b, 3, 4), 'its end is missing'],
    [
      'without a document',
      () => zipOf({ 'notes.txt': pngOf() }),
      'there is no *.chassis.json in it'
    ],
    [
      'with too many files',
      () =>
        zipOf(Object.fromEntries(Array.from({ length: 4001 }, (_, n) => [`${n}.txt`, pngOf()]))),
      'it holds 4001 files; the most is 4000'
    ],
    ['with a name that climbs', () => zipOf({ 'a/../../x.chassis.json': pngOf() }), 'leads out'],
    ['with a name from the root', () => zipOf({ '/x.chassis.json': pngOf() }), 'leads out'],
    ['with a drive in a name', () => zipOf({ 'C:x.chassis.json': pngOf() }), 'leads out'],
    ['with a backslash', () => zipOf({ 'a\\x.chassis.json': pngOf() }), 'leads out'],
    [
      'with a long name',
      () => zipOf({ [`${'a'.repeat(250)}.chassis.json`]: pngOf() }),
      'has 263 characters; the most is 240'
    ],
    [
      'that says it unpacks to more than is taken',
      () => withField(plainZip(), 24, zipLimits.allBytes + 1),
      'it holds 513 MB unpacked; the most is 512 MB'
    ],
    [
      'whose document says it has more than is taken',
      () => withField(plainZip(), 24, 60_000_000),
      'has 58 MB unpacked; the most is 47 MB'
    ],
    [
      'that holds more than it says',
      () => withField(plainZip(), 24, 10),
      'holds more than the 10 bytes'
    ],
    ['that holds less than it says', () => withField(plainZip(), 24, 1_000_000), 'is damaged'],
    ['whose check does not fit', () => withField(plainZip(), 16, 1), 'is damaged'],
    ['with a lock', () => withField(plainZip(), 8, 1, 2), 'is locked'],
    ['packed in an unknown way', () => withField(plainZip(), 10, 93, 2), '(method 93)'],
    ['that points past its end', () => withField(plainZip(), 42, 0xfffffff0), 'is damaged']
  ])('%s', (_name, make, words) => {
    expect(problemOf(make())).toContain(words);
  });

  it('that holds the same name twice', () => {
    const zip = zipOf({ 'a.chassis.json': pngOf(), 'b.chassis.json': pngOf() });
    // The second name in the list of contents is made the first's.
    const at = zip.lastIndexOf('b'.charCodeAt(0));
    zip[at] = 'a'.charCodeAt(0);
    expect(problemOf(zip)).toBe('"a.chassis.json" is in it twice');
  });

  it('at once where a small file would fill the memory', () => {
    // 40 MB of nothing, packed to 40 kB: within every limit, so inflated; its claim of 10 bytes is not.
    const bomb = zipOf({ 'x.chassis.json': [new Uint8Array(40_000_000), { level: 9 }] });
    expect(problemOf(withField(bomb, 24, 10))).toContain('holds more than the 10 bytes');
  });
});

describe('a picture in a zip', () => {
  const withPicture = (name: string, bytes: Uint8Array) =>
    read(zipOf({ 'x.chassis.json': textBytes(plainSet()), [name]: bytes }));

  it('that is not what its name says is left out, and the document opens', () => {
    const hash = hashOfPicture(pngOf(1));
    const { documents, pictures, notes } = withPicture(`pictures/${hash}.png`, pngOf(2));
    expect(documents).toHaveLength(1);
    expect(pictures.size).toBe(0);
    expect(notes).toEqual([
      `pictures/${hash}.png is not the picture that its name says and was left out`
    ]);
  });

  it('that is no picture is left out', () => {
    const script = new TextEncoder().encode('<svg onload="alert(1)"/>');
    const { pictures, notes } = withPicture(`pictures/${hashOfPicture(script)}.png`, script);
    expect(pictures.size).toBe(0);
    expect(notes[0]).toContain('is no picture and was left out');
  });

  it('that is too large is told with the limit, before it is unpacked', () => {
    const large = new Uint8Array(33 * 1024 * 1024);
    const zip = zipOf({
      'x.chassis.json': textBytes(plainSet()),
      [`${'0'.repeat(64)}.png`]: [large, { level: 9 }]
    });
    expect(problemOf(zip)).toContain('has 33 MB unpacked; the most is 32 MB');
  });

  it('that is missing is told by the names of its photos', () => {
    const document = opened(fixtureText());
    expect(missingPicturesNote(document, () => true)).toBeNull();
    expect(missingPicturesNote(document, () => false)).toBe(
      'the picture of “Under the chassis” is missing: its place is kept, add it again'
    );
  });

  // PNG (W3C), T.81 (ITU-T) and RFC 9649 give the beginnings; the rest is made up.
  it.each([
    [[...pngStart, 0], 'image/png'],
    [[0xff, 0xd8, 0xff, 0xe0], 'image/jpeg'],
    [[...Buffer.from('RIFF....WEBPVP8 ')], 'image/webp'],
    [[...Buffer.from('GIF89a')], undefined],
    [[], undefined]
  ])('%j is of type %s', (bytes, type) => {
    expect(pictureTypeOf(Uint8Array.from(bytes))).toBe(type);
  });
});

describe('mutated zips', () => {
  it('are read or refused with one message, and never throw', () => {
    const { document, pictures } = withPictures(opened(fixtureText()), 3);
    const zip = buildChassisZip([document], pictures);
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(zip.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        fc.nat(zip.length),
        (changes, cut) => {
          const copy = zip.slice();
          for (const [at, value] of changes) copy[at] = value;
          for (const bytes of [copy, copy.slice(0, cut)]) {
            const reading = readChassisZip(bytes, 'any.chassis.zip');
            if (reading.ok) {
              for (const [hash, picture] of reading.pictures) {
                expect(hashOfPicture(picture.bytes)).toBe(hash);
              }
            } else expect(reading.problems).toHaveLength(1);
          }
        }
      ),
      { seed: 17, numRuns: 2000 }
    );
  });
});

describe('the check of an entry', () => {
  it('is the CRC-32 of zlib', () => {
    // Reference: zlib by way of node:zlib, beside what our writer put into the list of contents.
    const zip = plainZip();
    const at = zip.length - 22 - (46 + 'bench-set.chassis.json'.length);
    const written = new DataView(zip.buffer, zip.byteOffset).getUint32(at + 16, true);
    expect(written).toBe(crc32(textBytes(plainSet())));
  });
});
