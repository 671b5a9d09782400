// Sound inputs to start from: what this program writes, and lists as people keep them.
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { saveDocument, type ChassisDocument } from '#document/index.ts';
import { buildShareLink } from '#storage/index.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';

const read = (path: string): Uint8Array => readFileSync(new URL(`../${path}`, import.meta.url));
const decoder = new TextDecoder();

/** Small documents with everything in them that the schema knows. */
export const smallDocuments: readonly ChassisDocument[] = fc.sample(arbitraryDocument(3), {
  seed: 71,
  numRuns: 30
});

/** Texts of documents, of an earlier version too. */
export const documentTexts: readonly string[] = [
  ...smallDocuments.map((document) => saveDocument(document)),
  decoder.decode(read('document/versions/radio-1.chassis.json'))
];

/** Wire lists in many manners. */
export const lists: readonly Uint8Array[] = readdirSync(new URL('../intake/lists', import.meta.url))
  .filter((name) => /\.(csv|tsv|txt)$/.test(name))
  .map((name) => read(`intake/lists/${name}`));

/** Zips that other programs wrote. */
export const zips: readonly Uint8Array[] = ['by-info-zip', 'by-python'].map((name) =>
  read(`storage/zips/${name}.chassis.zip`)
);

/** What follows the # in links to the small documents that fit into one. */
export const shareHashes: readonly string[] = smallDocuments.flatMap((document) => {
  const built = buildShareLink('https://underchassis.example/', document);
  return built.ok ? [built.link.slice(built.link.indexOf('#'))] : [];
});
