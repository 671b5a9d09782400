// Damaged inputs through every way in, seeded: each opens or is refused with clear words. What once went
// wrong lies in `found/` and is tried first.
import { readFileSync, readdirSync } from 'node:fs';
import { strFromU8, strToU8, unzipSync } from 'fflate';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import {
  documentSizeLimit,
  makeIdFrom,
  metadataForSvg,
  openDocument,
  packText
} from '#document/index.ts';
import { openFileBytes, openReading, readOpened } from '#intake/index.ts';
import { readAnyFile } from '#editor/files/read-any-file.ts';
import { buildChassisZip, linkLimits, readShareLink } from '#storage/index.ts';
import { seeded } from '../helpers/generate-chassis.ts';
import { checkOpened, checkPrototypes, checkRefusal, checkWords } from './judge.ts';
import {
  hostileTexts,
  mutateBytes,
  mutateJson,
  mutateText,
  pickFrom,
  type Chance
} from './mutate.ts';
import {
  documentTexts,
  lists,
  packWorkbook,
  shareHashes,
  smallDocuments,
  writeWorkbooks,
  zips
} from './seeds.ts';

const sheetTexts: readonly string[] = [
  ...hostileTexts,
  '<!DOCTYPE x [<!ENTITY a "b">]>',
  '&a;',
  '&#x0;',
  '<c r="XFD1048576"><v>1</v></c>',
  '<row r="99999999"><c r="A99999999"><v>1</v></c></row>',
  '<c r="AAAAAA1"><v>1</v></c>',
  "<c r='A99999999'><v>1</v></c>",
  '<c r = "A9999999999"><v>1</v></c>',
  '<c a=">" r="A99999999"><v>1</v></c>',
  '<c r="A0"><v>1</v></c>',
  '<c t="s"><v>99999</v></c>',
  '<c r="A1" t="d"><v>x</v></c>',
  '<v>1e999</v>',
  '<dimension ref="A1:XFD1048576"/>',
  '</sheetData>',
  '<sheetData>',
  '</si>',
  ' t="s"',
  ' r="B"'
];
const linkTexts: readonly string[] = [
  '=',
  '%',
  '%20',
  '…',
  '\n',
  ' ',
  '#',
  '&',
  '-_',
  'é',
  '+/',
  'z'
];

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const makeId = makeIdFrom(seeded(3));
const tally = { tried: 0, opened: 0 };

/** Opens a file as the editor does; holds what comes of it. */
const tryFile = async (bytes: Uint8Array, name: string): Promise<void> => {
  tally.tried += 1;
  const given = decoder.decode(bytes);
  const file = { name, size: bytes.length, arrayBuffer: async () => bytes.slice().buffer };
  const reading = await readAnyFile(file, makeId);
  if (!reading.ok) return checkRefusal(reading.problems, given);
  if (reading.kind === 'list') {
    const lists = reading.sheets.map(({ opened }) =>
      openReading(readOpened(opened, { fileName: name, makeId }))
    );
    for (const list of lists)
      if (list.ok) checkOpened(list.document, bytes.length);
      else checkRefusal(list.problems, given);
    if (lists.some(({ ok }) => ok)) tally.opened += 1;
    return;
  }
  tally.opened += 1;
  for (const document of reading.documents) checkOpened(document, bytes.length);
};

/** Opens what follows the # of a link as the editor does; holds what comes of it. */
const tryHash = (hash: string): void => {
  tally.tried += 1;
  const read = readShareLink(hash);
  if (read === null) {
    // Only what is no link of ours at all is passed over without a word.
    expect(hash.replace(/^#/, '').startsWith('chassis=')).toBe(false);
    return;
  }
  if (!read.ok) return checkWords(read.problem, hash);
  expect(read.text.length).toBeLessThanOrEqual(documentSizeLimit);
  const opened = openDocument(read.text, 'the link');
  if (!opened.ok) return checkRefusal(opened.problems, read.text);
  checkOpened(opened.document, read.text.length);
  tally.opened += 1;
};

/** Tries `count` damaged files of one name. */
const tryMany = (
  count: number,
  firstSeed: number,
  make: (chance: Chance) => Uint8Array,
  name: string
): Promise<void> =>
  tryEach(count, firstSeed, (chance) => {
    const bytes = make(chance);
    return () => tryFile(bytes, name);
  });

/** Tries `count` damaged inputs; says which seed it was where one goes wrong. */
const tryEach = async (
  count: number,
  firstSeed: number,
  make: (chance: Chance) => () => void | Promise<void>
): Promise<void> => {
  for (let turn = 0; turn < count; turn++) {
    const seed = firstSeed + turn;
    const attempt = make(seeded(seed));
    try {
      await attempt();
    } catch (error) {
      const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
      throw new Error(`seed ${seed}: ${what.slice(0, 1500)}`, { cause: error });
    }
  }
};

afterEach(checkPrototypes);
afterAll(() => {
  // Of each kind some must come through, else only the front door was tried.
  expect(tally.opened).toBeGreaterThan(tally.tried / 10);
});

describe('damaged input', () => {
  const minutes = 60_000;

  it('of a kind that once went wrong is opened or refused', async () => {
    const folder = new URL('found/', import.meta.url);
    for (const name of readdirSync(folder)) {
      if (name !== 'README.md') await tryFile(readFileSync(new URL(name, folder)), name);
    }
  });

  it(
    'documents with other values, keys and references',
    () =>
      tryMany(
        5000,
        100_000,
        (chance) =>
          encoder.encode(
            JSON.stringify(mutateJson(JSON.parse(pickFrom(documentTexts, chance)), chance))
          ),
        'x.chassis.json'
      ),
    10 * minutes
  );

  it(
    'documents whose text is damaged',
    () =>
      tryMany(
        3000,
        200_000,
        (chance) =>
          encoder.encode(mutateText(pickFrom(documentTexts, chance), hostileTexts, chance)),
        'x.chassis.json'
      ),
    10 * minutes
  );

  it(
    'wire lists',
    () =>
      tryMany(
        5000,
        300_000,
        (chance) => {
          const list = pickFrom(lists, chance);
          return chance() < 0.2
            ? mutateBytes(list, chance)
            : encoder.encode(mutateText(decoder.decode(list), hostileTexts, chance));
        },
        'list.csv'
      ),
    10 * minutes
  );

  it(
    'drawings',
    () =>
      tryMany(
        2000,
        400_000,
        (chance) => {
          const text = pickFrom(documentTexts, chance);
          const svg = `<svg xmlns="http://www.w3.org/2000/svg"><title>x</title>${metadataForSvg(text)}<g/></svg>`;
          return encoder.encode(
            mutateText(
              svg,
              [...hostileTexts, '</metadata>', '<g>', '<!DOCTYPE x [<!ENTITY a "b">]>', '&a;'],
              chance
            )
          );
        },
        'x.svg'
      ),
    10 * minutes
  );

  it(
    'zips',
    () => {
      const own = smallDocuments
        .slice(0, 8)
        .map((document) => buildChassisZip([document], new Map()));
      return tryMany(
        3000,
        500_000,
        (chance) => mutateBytes(pickFrom([...own, ...zips], chance), chance),
        'x.chassis.zip'
      );
    },
    10 * minutes
  );

  it(
    'links that are cut, changed, or hold a damaged document',
    async () => {
      expect(shareHashes.length).toBeGreaterThan(10);
      const before = tally.opened;
      await tryEach(1000, 720_000, (chance) => {
        const kind = chance();
        const hash =
          kind < 0.4
            ? mutateText(pickFrom(shareHashes, chance), linkTexts, chance)
            : `#chassis=${packText(
                kind < 0.8
                  ? JSON.stringify(mutateJson(JSON.parse(pickFrom(documentTexts, chance)), chance))
                  : mutateText(pickFrom(documentTexts, chance), hostileTexts, chance)
              )}`;
        return () => tryHash(hash);
      });
      expect(tally.opened - before).toBeGreaterThan(100);
    },
    minutes
  );

  it('a link that would unpack beyond all bounds is refused before it does', () => {
    const bomb = `#chassis=${packText(' '.repeat(documentSizeLimit + 1))}`;
    const read = readShareLink(bomb);
    expect(read).toMatchObject({ ok: false, problem: expect.stringMatching(/more than \d+ MB/) });
    for (const hash of shareHashes) expect(hash.length).toBeLessThanOrEqual(linkLimits.most);
  });

  it(
    'workbooks whose bytes are damaged',
    async () => {
      const books = await writeWorkbooks();
      await tryMany(
        600,
        700_000,
        (chance) => mutateBytes(pickFrom(books, chance), chance),
        'list.xlsx'
      );
    },
    5 * minutes
  );

  it(
    'workbooks whose sheets are damaged and packed again',
    async () => {
      const books = (await writeWorkbooks()).map((book) => unzipSync(book));
      const before = tally.opened;
      await tryMany(
        1400,
        710_000,
        (chance) => {
          const parts = { ...pickFrom(books, chance) };
          const inner = Object.keys(parts).filter((name) => /\.(?:xml|rels)$/.test(name));
          // A sheet or its texts as often as any other part.
          const wanted =
            chance() < 0.5
              ? inner.filter((name) => /worksheets\/sheet|sharedStrings/.test(name))
              : inner;
          const name = pickFrom(wanted, chance);
          const text = strFromU8(parts[name] ?? new Uint8Array());
          if (chance() < 0.05) Reflect.deleteProperty(parts, name);
          else parts[name] = strToU8(mutateText(text, sheetTexts, chance, 2));
          // Not packed, so that what a message quotes is found in what was given.
          return packWorkbook(parts);
        },
        'list.xlsx'
      );
      expect(tally.opened - before).toBeGreaterThan(150);
    },
    5 * minutes
  );

  it(
    'anything at all',
    () =>
      tryMany(
        1000,
        600_000,
        (chance) =>
          Uint8Array.from({ length: Math.floor(chance() * 300) }, () => Math.floor(chance() * 256)),
        pickFrom(['x', 'x.csv', 'x.svg', 'x.chassis.json', 'x.chassis.zip'], seeded(9))
      ),
    2 * minutes
  );
});

describe('a file by itself', () => {
  it('never throws, whatever its name', () => {
    for (const name of hostileTexts) {
      const opened = openFileBytes(encoder.encode('{'), name, makeId);
      expect(opened.ok).toBe(false);
    }
  });
});
