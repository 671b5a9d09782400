// Any of the three things that hold a chassis (a document, a wire list, a drawing that we wrote)
// read into a document. What was noticed on the way is said on stderr; nothing is half-loaded.
import { extname, basename } from 'node:path';
import { randomBytes } from 'node:crypto';
import {
  documentTextFromSvg,
  makeIdFrom,
  openDocument,
  type ChassisDocument
} from '#document/index.ts';
import { decodeListBytes, readWireList } from '#intake/index.ts';
import { CommandError, type Terminal } from './command.ts';
import { readBytes } from './files.ts';

const chance = (): number => randomBytes(4).readUInt32LE() / 2 ** 32;

const openText = (text: string, path: string, terminal: Terminal): ChassisDocument => {
  const opened = openDocument(text, basename(path));
  if (!opened.ok) {
    for (const problem of opened.problems.slice(1))
      terminal.say(`${problem.file}: ${problem.place}: ${problem.wrong}: ${problem.wayOut}`);
    const [first] = opened.problems;
    throw new CommandError(
      first
        ? `${path}: ${first.place}: ${first.wrong}: ${first.wayOut}`
        : `${path}: not a chassis document`
    );
  }
  return opened.document;
};

const readList = (bytes: Uint8Array, path: string, terminal: Terminal): ChassisDocument => {
  const list = readWireList(decodeListBytes(bytes), {
    fileName: basename(path),
    makeId: makeIdFrom(chance)
  });
  for (const note of list.notes) terminal.say(note.text);
  if (!list.document)
    throw new CommandError(
      `${path}: no wire could be read: a wire list has a heading row with "from" and "to", then one wire a row`
    );
  return list.document;
};

/** The chassis in a file: JSON document, exported SVG or wire list, told apart by content.
 *  @throws CommandError with the file, the place and the way out */
export const readChassis = async (path: string, terminal: Terminal): Promise<ChassisDocument> => {
  const bytes = await readBytes(path);
  const start = new TextDecoder()
    .decode(bytes.subarray(0, 512))
    .replace(/^\uFEFF/, '')
    .trimStart();
  if (start.startsWith('{')) return openText(new TextDecoder().decode(bytes), path, terminal);
  if (start.startsWith('<')) {
    const found = documentTextFromSvg(new TextDecoder().decode(bytes));
    if (!found.ok) throw new CommandError(`${path}: ${found.problem}`);
    return openText(found.text, path, terminal);
  }
  if (['.json', '.svg'].includes(extname(path).toLowerCase()))
    throw new CommandError(
      `${path}: the name says ${extname(path)}, but the content is something else: is it the right file?`
    );
  return readList(bytes, path, terminal);
};

/** The chassis in a file that must be a wire list. */
export const readChassisFromList = async (
  path: string,
  terminal: Terminal
): Promise<ChassisDocument> => readList(await readBytes(path), path, terminal);
