// Any of the three files that hold a chassis (a document, a wire list, a drawing that we wrote) made
// into a document, told apart by content. Nothing is half-loaded: it opens, or there is a list of problems.
import {
  documentTextFromSvg,
  openDocument,
  type ChassisDocument,
  type MakeId
} from '#document/index.ts';
import { decodeListBytes, readWireList } from '#intake/index.ts';
import { kindOfText } from '#storage/index.ts';

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
      readonly from: 'document' | 'wire list' | 'drawing';
    }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

const failed = (place: string, wrong: string, wayOut: string): Opened => ({
  ok: false,
  problems: [{ place, wrong, wayOut }]
});

/** More than this is no chassis: a document of 1,000 wires has about 1 MB. */
export const largestFileBytes = 64 * 1024 * 1024;

const openText = (text: string, name: string, from: 'document' | 'drawing'): Opened => {
  const opened = openDocument(text, name);
  return opened.ok
    ? { ok: true, document: opened.document, notes: [], from }
    : { ok: false, problems: opened.problems };
};

const openList = (bytes: Uint8Array, name: string, makeId: MakeId): Opened => {
  const list = readWireList(decodeListBytes(bytes), { fileName: name, makeId });
  const notes = list.notes.map(({ text }) => text);
  if (list.document) return { ok: true, document: list.document, notes, from: 'wire list' };
  const problems = notes.map((wrong) => ({ place: 'the list', wrong, wayOut: 'see below' }));
  return {
    ok: false,
    problems: [
      ...problems,
      {
        place: 'the whole file',
        wrong: 'no wire could be read',
        wayOut: 'a wire list has a row of headings with "from" and "to", then one wire a row'
      }
    ]
  };
};

/** The chassis in a file's bytes. Never throws. */
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
