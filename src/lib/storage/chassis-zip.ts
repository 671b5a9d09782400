// Chassis with their pictures in one file: each document as the text that its own file would have, and each
// picture once, under its hash. One chassis or all of them: it is the same kind of file.
import {
  documentSizeLimit,
  hashOfPicture,
  saveDocument,
  type ChassisDocument,
  type Problem
} from '#document/index.ts';
import { zipSync, type ZipOptions } from 'fflate';
import { picturesOf } from './document-pictures.ts';
import { documentEnding, fileNameOf } from './files.ts';
import { largestPictureBytes, type StoredPicture } from './picture-store.ts';
import { pictureEndings, pictureTypeOf } from './picture-type.ts';
import { readZipDirectory, readZipEntry, ZipFault, type ZipEntry } from './zip-directory.ts';

export interface ZipDocument {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export type ZipReading =
  | {
      readonly ok: true;
      readonly documents: readonly ZipDocument[];
      /** By hash: each is what its name says. */
      readonly pictures: ReadonlyMap<string, StoredPicture>;
      /** What was left out and why, a sentence each. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

// The same content is the same bytes, whenever and wherever it is written.
const zipTime = new Date(1980, 0, 1);
const packed: ZipOptions = { level: 6, mtime: zipTime };
/** Pictures are packed already. */
const plain: ZipOptions = { level: 0, mtime: zipTime };

/** The names of documents in a zip, each once. */
const namesOf = (documents: readonly ChassisDocument[]): string[] => {
  const taken = new Set<string>();
  return documents.map(({ identity }) => {
    let name = fileNameOf(identity.title, documentEnding);
    for (let count = 2; taken.has(name); count++) {
      name = fileNameOf(identity.title, `-${count}${documentEnding}`);
    }
    taken.add(name);
    return name;
  });
};

/** The bytes of a `*.chassis.zip`. The same documents and pictures give the same bytes.
 *  @param pictures by hash; those that no document shows are left out */
export const buildChassisZip = (
  documents: readonly ChassisDocument[],
  pictures: ReadonlyMap<string, StoredPicture>
): Uint8Array => {
  const inOrder = [...documents].sort((a, b) => (a.id < b.id ? -1 : 1));
  const names = namesOf(inOrder);
  const texts = inOrder.map((document, index): [string, [Uint8Array, ZipOptions]] => [
    names[index] ?? '',
    [new TextEncoder().encode(saveDocument(document)), packed]
  ]);
  const shown = new Set(inOrder.flatMap((document) => [...picturesOf(document)]));
  const files = [...shown].sort().flatMap((hash): [string, [Uint8Array, ZipOptions]][] => {
    const picture = pictures.get(hash);
    if (!picture) return [];
    return [[`pictures/${hash}.${pictureEndings[picture.type]}`, [picture.bytes, plain]]];
  });
  return zipSync(Object.fromEntries([...texts, ...files]));
};

const lastPart = (name: string): string => name.split('/').at(-1) ?? '';
const isDocument = ({ name }: ZipEntry): boolean =>
  lastPart(name).endsWith(documentEnding) && !lastPart(name).startsWith('.');
const hashInName = ({ name }: ZipEntry): string | undefined =>
  /^([0-9a-f]{64})\.(?:png|jpe?g|webp)$/.exec(lastPart(name))?.[1];

const checkSize = ({ name, bytes }: ZipEntry, most: number): void => {
  if (bytes <= most) return;
  const size = Math.ceil(bytes / 1024 / 1024);
  throw new ZipFault(
    `${JSON.stringify(name)} has ${size} MB unpacked; the most is ${Math.floor(most / 1024 / 1024)} MB`
  );
};

/** One picture, or a sentence on why it is left out. */
const readPicture = (bytes: Uint8Array, entry: ZipEntry, hash: string): StoredPicture | string => {
  try {
    const content = readZipEntry(bytes, entry);
    const type = pictureTypeOf(content);
    if (type === undefined) return `${entry.name} is no picture and was left out`;
    if (hashOfPicture(content) !== hash) {
      return `${entry.name} is not the picture that its name says and was left out`;
    }
    return { bytes: content, type };
  } catch (error) {
    if (error instanceof ZipFault) return `a picture was left out: ${error.message}`;
    throw error;
  }
};

const readAll = (bytes: Uint8Array): Extract<ZipReading, { ok: true }> => {
  const entries = readZipDirectory(bytes);
  const found = entries.filter(isDocument);
  if (found.length === 0) throw new ZipFault(`there is no *${documentEnding} in it`);
  const shown = entries.filter((entry) => hashInName(entry) !== undefined);
  for (const entry of found) checkSize(entry, documentSizeLimit);
  for (const entry of shown) checkSize(entry, largestPictureBytes);
  const pictures = new Map<string, StoredPicture>();
  const notes: string[] = [];
  for (const entry of shown) {
    const hash = hashInName(entry) ?? '';
    const picture = readPicture(bytes, entry, hash);
    if (typeof picture === 'string') notes.push(picture);
    else pictures.set(hash, picture);
  }
  const documents = found.map((entry) => ({
    name: lastPart(entry.name),
    bytes: readZipEntry(bytes, entry)
  }));
  return { ok: true, documents, pictures, notes };
};

/** What is in a `*.chassis.zip`. Sizes, count and names are judged before anything is inflated; a picture
 *  that is not what its name says is left out and told. Never throws.
 *  @param file what the problems call it */
export const readChassisZip = (bytes: Uint8Array, file: string): ZipReading => {
  try {
    return readAll(bytes);
  } catch (error) {
    if (!(error instanceof ZipFault)) throw error;
    const wayOut = 'is it the right file, and whole?';
    return { ok: false, problems: [{ file, place: 'the zip', wrong: error.message, wayOut }] };
  }
};
