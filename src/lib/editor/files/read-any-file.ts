// The chassis in a file that was chosen or dropped: one document, or a zip of one or many with pictures.
import type { ChassisDocument, MakeId } from '#document/index.ts';
import { openFileBytes, type FileProblem } from '#intake/index.ts';
import { isZip, readChassisZip, zipLimits, type StoredPicture } from '#storage/index.ts';

export type FileReading =
  | {
      readonly ok: true;
      readonly documents: readonly ChassisDocument[];
      readonly pictures: ReadonlyMap<string, StoredPicture>;
      readonly notes: readonly string[];
      /** True where saving may write back to the same file. */
      readonly isDocumentFile: boolean;
    }
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
  return { ok: true, documents, pictures: zip.pictures, notes, isDocumentFile: true };
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
  if (isZip(bytes)) return readZip(bytes, file.name, makeId);
  const opened = openFileBytes(bytes, file.name, makeId);
  if (!opened.ok) return opened;
  const { document, notes, from } = opened;
  const isDocumentFile = from === 'document';
  return { ok: true, documents: [document], pictures: new Map(), notes, isDocumentFile };
};
