// No text of a document becomes markup, style, script, address or formula in what goes out: documents full of
// hostile texts are written beside the same documents with harmless ones, and no tag, attribute or address
// may occur that the harmless ones do not have.
import {
  makeIdFrom,
  openDocument,
  saveDocument,
  metadataForSvg,
  type ChassisDocument
} from '#document/index.ts';
import { runChecks } from '#checks/index.ts';
import { buildDiagram, buildDisplayList, buildPictorial, toSvg } from '#drawing/index.ts';
import {
  benchList,
  buildSchedule,
  labelSheets,
  makeWholePlan,
  planSheets,
  scheduleToCsv,
  scheduleToXlsx,
  sheetsToPage,
  tagsPage,
  testSheetOnPaper
} from '#paperwork/index.ts';
import { openFileBytes } from '#intake/index.ts';
import { buildTestSheets } from '#plan/index.ts';
import { buildStudy } from '#study/index.ts';
import { strFromU8, unzipSync } from 'fflate';
import Papa from 'papaparse';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { generateChassis, seeded } from '../helpers/generate-chassis.ts';
import { hostileTexts, pickFrom, type Chance } from './mutate.ts';
import { smallDocuments } from './seeds.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

/** Fields that people write what they like into. */
const freeFields = new Set(
  'title set chassisNumber run data tracedBy licence notes name reference type value function as termination number colour tracer condition style insulation dress text where jacket critical sleeve'.split(
    ' '
  )
);

const replaceTexts = (value: unknown, text: () => string, key = ''): unknown => {
  if (Array.isArray(value)) return value.map((inner) => replaceTexts(inner, text, key));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(
      Object.entries(value).map(([name, inner]) => [
        name,
        name === 'picture' ? inner : replaceTexts(inner, text, name)
      ])
    );
  }
  return typeof value === 'string' && freeFields.has(key) ? text() : value;
};

const withTexts = (document: ChassisDocument, text: () => string): ChassisDocument => {
  const opened = openDocument(JSON.stringify(replaceTexts(document, text)), 'x');
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  return opened.document;
};

/** Texts that break out of where they stand, of a length that each field takes. */
const breakouts = hostileTexts.filter((text) => text.length < 400);

interface Outputs {
  readonly svgs: readonly string[];
  readonly pages: readonly string[];
  readonly csv: string;
  /** The XML files of the workbook. */
  readonly book: readonly string[];
}

const write = async (document: ChassisDocument): Promise<Outputs> => {
  const study = buildStudy(document);
  const findings = runChecks(study);
  const { title } = document.identity;
  const metadata = metadataForSvg(saveDocument(document));
  const diagram = await buildDiagram(study, layoutEngine, { tries: 1, timeLimitMs: 60_000 });
  const whole = makeWholePlan(study);
  const tests = buildTestSheets(study).map((test) => testSheetOnPaper(study, test));
  const [sheet] = labelSheets;
  const rows = buildSchedule(study, findings);
  const book = await scheduleToXlsx(study, rows, whole);
  const files = unzipSync(new Uint8Array(await book.arrayBuffer()));
  return {
    svgs: [
      toSvg(buildDisplayList(diagram, { findings }), { title, metadata }),
      toSvg(buildPictorial(study, { findings }), { title, metadata })
    ],
    pages: [
      sheetsToPage(document, [...planSheets(study, whole), benchList(study, whole.plan), ...tests]),
      ...(sheet ? [tagsPage(study, { sheet, address: 'https://club.invalid/' })] : [])
    ],
    csv: scheduleToCsv(rows),
    book: Object.values(files).map((bytes) => strFromU8(bytes))
  };
};

/** "<text x=", "<svg viewBox=": every tag with every attribute that a text has, and every address. */
const markupOf = (text: string): Set<string> => {
  const found = new Set<string>();
  for (const [, tag = '', inside = ''] of text.matchAll(
    /<([a-zA-Z!/?][^\s>/]*)((?:"[^"]*"|[^">])*)>/g
  )) {
    found.add(tag);
    for (const [, name = '', value = ''] of inside.matchAll(/\s([^\s=]+)="([^"]*)"/g)) {
      found.add(`${tag} ${name}`);
      const address = /^\s*(?:[a-z]+:|\/\/)/i.exec(value)?.[0];
      if (/href$|src$|action$/i.test(name)) found.add(`${tag} ${name}=${address ?? '#'}`);
    }
  }
  return found;
};

/** Sound XML without script, handler or address. */
const checkXml = (xml: string): void => {
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ local, attributes }) => {
    expect(local.toLowerCase()).not.toMatch(/^(script|foreignobject|iframe|animate|set)$/);
    for (const [name, { value }] of Object.entries(attributes)) {
      expect(name.toLowerCase()).not.toMatch(/^on/);
      if (/href$/.test(name)) expect(value).toMatch(/^#|^data:image\//);
      if (name === 'style') expect(value).not.toMatch(/url\(|expression|@import/i);
    }
  });
  parser.write(xml).close();
};

const compare = async (document: ChassisDocument, chance: Chance): Promise<void> => {
  const hostile = await write(withTexts(document, () => pickFrom(breakouts, chance)));
  const harmless = await write(withTexts(document, () => 'red'));
  hostile.svgs.forEach(checkXml);
  for (const file of hostile.book) {
    checkXml(file);
    expect(file).not.toMatch(/<f[ >]|<hyperlink/);
  }
  const known = new Set(
    [...harmless.svgs, ...harmless.pages].flatMap((text) => [...markupOf(text)])
  );
  for (const text of [...hostile.svgs, ...hostile.pages]) {
    const strange = [...markupOf(text)].filter((one) => !known.has(one));
    expect(strange).toEqual([]);
  }
  const { data } = Papa.parse<string[]>(hostile.csv);
  for (const cell of data.flat()) expect(cell).not.toMatch(/^[=+@\t\r\n]|^-(?![\d.])/);
};

describe('what goes out', () => {
  it('has no markup, address or formula of a document', async () => {
    const chance = seeded(41);
    for (const document of [generateChassis(30, 5), ...smallDocuments.slice(0, 12)])
      await compare(document, chance);
  }, 300_000);

  it('opens again as the document that it was', async () => {
    const chance = seeded(42);
    const makeId = makeIdFrom(seeded(43));
    for (const document of smallDocuments.slice(0, 10)) {
      const given = withTexts(document, () => pickFrom(breakouts, chance));
      const { svgs } = await write(given);
      for (const svg of svgs) {
        const opened = openFileBytes(new TextEncoder().encode(svg), 'x.svg', makeId);
        expect(opened.ok && saveDocument(opened.document)).toBe(saveDocument(given));
      }
    }
  }, 300_000);
});
