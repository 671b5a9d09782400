// What is in a file that was chosen or dropped: one document, a zip of one or many with pictures, or a
// wire list, which a person looks at before it comes in.
import type { ChassisDocument, MakeId } from '#document/index.ts';
import {
  decodeListBytes,
  isListFile,
  openFileBytes,
  openListText,
  openSheets,
  readWorkbook,
  type FileProblem,
  type OpenedSheet
} from '#intake/index.ts';
import {
  isWorkbook,
  isZip,
  readChassisZip,
  unpackWorkbook,
  zipLimits,
  type StoredPicture
} from '#storage/index.ts';

export type FileReading =
  | {
      readonly ok: true;
      readonly kind: 'chassis';
      readonly documents: readonly ChassisDocument[];
      readonly pictures: ReadonlyMap<string, StoredPicture>;
      readonly notes: readonly string[];
      /** True where saving may write back to the same file. */
      readonly isDocumentFile: boolean;
    }
  /** A wire list, as text or on the sheets of a workbook: nothing of it is read yet. */
  | { readonly ok: true; readonly kind: 'list'; readonly sheets: readonly OpenedSheet[] }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

const readZip = (bytes: Uint8Array, name: string, makeId: MakeId): FileReading => {
  const zip = readChassisZip(bytes, name);
  if (!zip.ok) return zip;
  const notes = [...zip.notes];
  const documents: ChassisDocument[] = [];
  const problems: FileProblem[] = [];
  for (const inside of zip.documents) {
    const opened = openFileBytes(inside.bytes, inside.name, makeId);
    if (opened.ok) {
      documents.push(opened.document);
      notes.push(...opened.notes);
    } else problems.push(...opened.problems);
  }
  if (documents.length === 0) return { ok: false, problems };
  notes.push(...problems.map(({ place, wrong }) => `left out: ${place} ${wrong}`));
  return {
    ok: true,
    kind: 'chassis',
    documents,
    pictures: zip.pictures,
    notes,
    isDocumentFile: true
  };
};

const readSheets = async (bytes: Uint8Array, name: string): Promise<FileReading> => {
  const unpacked = unpackWorkbook(bytes, name);
  if (!unpacked.ok) return unpacked;
  const reading = await readWorkbook(unpacked.plainZip);
  const sheets = reading.ok ? openSheets(reading.sheets) : [];
  if (sheets.length > 0) return { ok: true, kind: 'list', sheets };
  const wrong = reading.ok ? 'there is nothing on its sheets' : reading.problem;
  const wayOut = 'save the sheet with the wires as CSV, and open that';
  return { ok: false, problems: [{ place: 'the workbook', wrong, wayOut }] };
};

/** Whatever chassis are in a file, or what is wrong with it. Never throws on what is in the file. */
export const readAnyFile = async (
  file: Pick<File, 'name' | 'size' | 'arrayBuffer'>,
  makeId: MakeId
): Promise<FileReading> => {
  if (file.size > zipLimits.fileBytes) {
    const size = `it has ${Math.ceil(file.size / 1024 / 1024)} MB`;
    const most = `the most is ${zipLimits.fileBytes / 1024 / 1024} MB: is it the right file?`;
    return { ok: false, problems: [{ place: 'the whole file', wrong: size, wayOut: most }] };
  }
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (isWorkbook(bytes)) return readSheets(bytes, file.name);
  if (isZip(bytes)) return readZip(bytes, file.name, makeId);
  if (isListFile(bytes, file.name)) {
    const opened = openListText(decodeListBytes(bytes));
    return { ok: true, kind: 'list', sheets: [{ name: '', opened }] };
  }
  const opened = openFileBytes(bytes, file.name, makeId);
  if (!opened.ok) return opened;
  const { document, notes, from } = opened;
  const isDocumentFile = from === 'document';
  return {
    ok: true,
    kind: 'chassis',
    documents: [document],
    pictures: new Map(),
    notes,
    isDocumentFile
  };
};

/** Pasted rows as a list; null where no ends of wires are seen in them. */
export const openPastedList = (text: string): OpenedSheet | null => {
  const opened = openListText(text);
  return opened.ok && opened.source.isRecognised ? { name: '', opened } : null;
};
