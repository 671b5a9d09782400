// Any of the things that hold a chassis (a document, a zip of one with its pictures, a wire list as text or
// workbook, a drawing that we wrote) read into a document. What was noticed on the way is said on stderr; nothing is half-loaded.
import { randomBytes } from 'node:crypto';
import { basename } from 'node:path';
import { makeIdFrom, type ChassisDocument } from '#document/index.ts';
import {
  openFileBytes,
  openReading,
  openSheets,
  readOpened,
  readWorkbook,
  type Opened
} from '#intake/index.ts';
import {
  isWorkbook,
  isZip,
  readChassisZip,
  unpackWorkbook,
  type StoredPicture
} from '#storage/index.ts';
import { CommandError, type Terminal } from './command.ts';
import { readBytes } from './files.ts';

const chance = (): number => randomBytes(4).readUInt32LE() / 2 ** 32;

/** Pictures by their hash, from beside the document. */
export type Pictures = ReadonlyMap<string, StoredPicture>;
type OpenedWithPictures = Opened & { readonly pictures?: Pictures };

const openZip = (bytes: Uint8Array, name: string): OpenedWithPictures => {
  const zip = readChassisZip(bytes, name);
  if (!zip.ok) return zip;
  const [inside, ...others] = zip.documents;
  if (inside === undefined || others.length > 0) {
    const names = zip.documents.map((document) => document.name).join(', ');
    const wrong = `it holds ${zip.documents.length} chassis (${names})`;
    const wayOut = 'unpack it and give the one that is meant';
    return { ok: false, problems: [{ place: 'the zip', wrong, wayOut }] };
  }
  const opened = openFileBytes(inside.bytes, inside.name, makeIdFrom(chance));
  return opened.ok
    ? { ...opened, notes: [...zip.notes, ...opened.notes], pictures: zip.pictures }
    : opened;
};

const workbookFailed = (wrong: string): Opened => {
  const wayOut = 'save the sheet with the wires as CSV, and read that';
  return { ok: false, problems: [{ place: 'the workbook', wrong, wayOut }] };
};

/** The wires of a workbook's sheet: the first in which ends are found. */
const openWorkbook = async (bytes: Uint8Array, name: string): Promise<Opened> => {
  const unpacked = unpackWorkbook(bytes, name);
  if (!unpacked.ok) return unpacked;
  const reading = await readWorkbook(unpacked.plainZip);
  if (!reading.ok) return workbookFailed(reading.problem);
  const [main, ...others] = openSheets(reading.sheets);
  if (main === undefined) return workbookFailed('there is nothing on its sheets');
  const opened = openReading(
    readOpened(main.opened, { fileName: name, makeId: makeIdFrom(chance) })
  );
  if (!opened.ok || others.length === 0) return opened;
  const left = others.map((sheet) => JSON.stringify(sheet.name)).join(', ');
  const note = `sheet ${JSON.stringify(main.name)} was read, and not ${left}`;
  return { ...opened, notes: [note, ...opened.notes] };
};

const openAny = async (bytes: Uint8Array, name: string): Promise<OpenedWithPictures> => {
  if (isWorkbook(bytes)) return openWorkbook(bytes, name);
  return isZip(bytes) ? openZip(bytes, name) : openFileBytes(bytes, name, makeIdFrom(chance));
};

const read = async (
  path: string,
  terminal: Terminal
): Promise<OpenedWithPictures & { ok: true }> => {
  const opened = await openAny(await readBytes(path), basename(path));
  if (opened.ok) {
    for (const note of opened.notes) terminal.say(note);
    return opened;
  }
  const lines = opened.problems.map(
    ({ place, wrong, wayOut }) => `${path}: ${place}: ${wrong}: ${wayOut}`
  );
  // The last line is the one that counts: it ends the run.
  for (const line of lines.slice(0, -1)) terminal.say(line);
  throw new CommandError(lines[lines.length - 1] ?? `${path}: it holds no chassis`);
};

const listKnowsLess =
  'a list holds wires alone; without values of parts, service data and readings, stresses and findings can come out lower than they are';

/** The chassis in a file (JSON document, zip of one, exported SVG, wire list or workbook, told apart by content) with the
 *  pictures that lie beside it; none where the file is no zip.
 *  @throws CommandError with the file, the place and the way out */
export const readChassis = async (
  path: string,
  terminal: Terminal
): Promise<{ readonly document: ChassisDocument; readonly pictures: Pictures }> => {
  const { document, from, pictures = new Map() } = await read(path, terminal);
  if (from === 'wire list') terminal.say(`${path}: ${listKnowsLess}`);
  return { document, pictures };
};

/** The chassis in a file that must be a wire list.
 *  @throws CommandError as well where it is a document or a drawing already */
export const readChassisFromList = async (
  path: string,
  terminal: Terminal
): Promise<ChassisDocument> => {
  const opened = await read(path, terminal);
  if (opened.from !== 'wire list')
    throw new CommandError(
      `${path}: this is a ${opened.from} and no wire list: check, schedule, draw and build take it as it is`
    );
  return opened.document;
};
