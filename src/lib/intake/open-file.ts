// Any of the three files that hold a chassis (a document, a wire list, a drawing that we wrote) made
// into a document, told apart by content. Nothing is half-loaded: it opens, or there is a list of problems.
import {
  documentTextFromPage,
  documentTextFromSvg,
  isPage,
  openDocument,
  shortenPiece,
  type ChassisDocument,
  type MakeId
} from '#document/index.ts';
import { decodeListBytes } from './decode-list-bytes.ts';
import { readWireList, type WireListReading } from './read-wire-list.ts';

export interface FileProblem {
  readonly place: string;
  readonly wrong: string;
  readonly wayOut: string;
}

export type Opened =
  | {
      readonly ok: true;
      readonly document: ChassisDocument;
      /** What was noticed on the way, a sentence each. */
      readonly notes: readonly string[];
      readonly from: 'document' | 'wire list' | 'drawing' | 'page';
    }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

const failed = (place: string, wrong: string, wayOut: string): Opened => ({
  ok: false,
  problems: [{ place, wrong: shortenPiece(wrong), wayOut }]
});

/** More than this is no chassis: a document of 1,000 wires has about 1 MB. */
const largestFileBytes = 64 * 1024 * 1024;

const openText = (text: string, name: string, from: 'document' | 'drawing' | 'page'): Opened => {
  const opened = openDocument(text, name);
  if (!opened.ok) return { ok: false, problems: opened.problems };
  const { document, newerVersion, migratedFrom } = opened;
  const notes = [
    ...(newerVersion === undefined
      ? []
      : [
          `${name} was written by a newer version (${newerVersion}) of this program: it can be looked at and not changed`
        ]),
    ...(migratedFrom === undefined
      ? []
      : [`${name} was of version ${migratedFrom} and has been brought up to date`])
  ];
  return { ok: true, document, notes, from };
};

/** What a list that was read gives, or why it gives nothing. */
export const openReading = ({ document, notes }: WireListReading): Opened => {
  const words = notes.map(({ text }) => text);
  if (document) return { ok: true, document, notes: words, from: 'wire list' };
  return failed(
    'the whole file',
    ['no wire could be read', ...words].join('; '),
    'a wire list has a row of headings with "from" and "to", then one wire a row'
  );
};

const openList = (bytes: Uint8Array, name: string, makeId: MakeId): Opened =>
  openReading(readWireList(decodeListBytes(bytes), { fileName: name, makeId }));

type FileKind = 'document' | 'drawing' | 'page' | 'list';

/** What a text holds, by how it begins: a document in JSON, a page that we wrote, a drawing in SVG, else rows of a list. */
const kindOfText = (text: string): FileKind => {
  if (isPage(text)) return 'page';
  const start = /^\uFEFF?\s*(.?)/.exec(text)?.[1];
  return start === '{' ? 'document' : start === '<' ? 'drawing' : 'list';
};

/** The chassis in a file's bytes, told apart by content: names can be wrong. Never throws. */
export const openFileBytes = (bytes: Uint8Array, name: string, makeId: MakeId): Opened => {
  if (bytes.length === 0) return failed('the whole file', 'it is empty', 'choose another file');
  if (bytes.length > largestFileBytes) {
    const size = `${Math.round(bytes.length / 1024 / 1024)} MB`;
    return failed(
      'the whole file',
      `it has ${size}`,
      'a chassis has 64 MB at most: is it the right file?'
    );
  }
  const decoder = new TextDecoder();
  const kind = kindOfText(decoder.decode(bytes.subarray(0, 512)));
  if (kind === 'document') return openText(decoder.decode(bytes), name, 'document');
  if (kind === 'page') {
    const found = documentTextFromPage(decoder.decode(bytes));
    return found.ok
      ? openText(found.text, name, 'page')
      : failed('the page', found.problem, 'open a page that Underchassis wrote');
  }
  if (kind === 'drawing') {
    const found = documentTextFromSvg(decoder.decode(bytes));
    return found.ok
      ? openText(found.text, name, 'drawing')
      : failed('the drawing', found.problem, 'open a drawing that Underchassis wrote');
  }
  if (/\.(json|svg)$/i.test(name)) {
    const wrong = 'the content is not what the name says';
    return failed('the beginning', wrong, 'is it the right file, and whole?');
  }
  return openList(bytes, name, makeId);
};

/** True where a file is neither a document nor a drawing, so that it can only be a list. */
export const isListFile = (bytes: Uint8Array, name: string): boolean =>
  bytes.length > 0 &&
  bytes.length <= largestFileBytes &&
  kindOfText(new TextDecoder().decode(bytes.subarray(0, 512))) === 'list' &&
  !/\.(json|svg)$/i.test(name);
