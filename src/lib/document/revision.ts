// A saved copy carries the hashes of the revisions that it came from, so that two copies of one
// document can be compared: which is the later, and where they parted.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { isSameJson } from './plain-json.ts';
import { saveDocument } from './save-document.ts';
import type { ChassisDocument } from './schema.ts';

/** Half of SHA-256 is plenty to tell revisions apart. */
const hashDigits = 32;
/** The schema's limit: the oldest are forgotten. */
const lineageLimit = 10_000;

/** The hash of a saved text, 32 digits of SHA-256 (FIPS 180-4). */
export const hashOfText = (text: string): string =>
  bytesToHex(sha256(utf8ToBytes(text))).slice(0, hashDigits);

/** The hash of a document as it would be saved. */
export const hashOfDocument = (document: ChassisDocument): string =>
  hashOfText(saveDocument(document));

/** The document with a revision that it came from at the end of its lineage. */
export const withRevision = (document: ChassisDocument, hash: string): ChassisDocument =>
  document.lineage.at(-1) === hash
    ? document
    : { ...document, lineage: [...document.lineage, hash].slice(-lineageLimit) };

/** What is to be saved when a document was opened or saved as `base` and is `document` now: `base`
 *  itself where nothing changed, so that its bytes stay the same; else the document with `base` as
 *  the last of its lineage. */
export const buildRevision = (
  document: ChassisDocument,
  base: ChassisDocument
): ChassisDocument => {
  const { lineage } = base;
  if (isSameJson({ ...document, lineage }, base)) return base;
  return withRevision({ ...document, lineage }, hashOfDocument(base));
};

/** How two copies of a document stand to each other: the same revision, one made from the other, or
 *  both made from an earlier one. */
export const compareRevisions = (
  a: ChassisDocument,
  b: ChassisDocument
): 'same' | 'first is later' | 'second is later' | 'parted' | 'unrelated' => {
  const [hashA, hashB] = [hashOfDocument(a), hashOfDocument(b)];
  if (hashA === hashB) return 'same';
  if (a.lineage.includes(hashB)) return 'first is later';
  if (b.lineage.includes(hashA)) return 'second is later';
  const ofB = new Set(b.lineage);
  return a.lineage.some((hash) => ofB.has(hash)) ? 'parted' : 'unrelated';
};
