// A chassis in a link, after the #: what stands there is never sent to a server. Short enough to be mailed, or
// not made at all: a link that is cut on its way is worse than a file.
import {
  documentSizeLimit,
  packText,
  saveDocument,
  unpackText,
  type ChassisDocument
} from '#document/index.ts';

/** Characters of the whole link. Above the first some programs cut links; above the second none is made.
 *  Common practice, no source. */
export const linkLimits = { warnAbove: 8_000, most: 32_000 } as const;

const key = 'chassis=';

export type ShareLink =
  | {
      readonly ok: true;
      readonly link: string;
      /** Some programs cut links as long as this one. */
      readonly isLong: boolean;
    }
  | { readonly ok: false; readonly length: number };

/** The link to a document, or how long it would have to be.
 *  @param address of the editor, without anything after the # */
export const buildShareLink = (address: string, document: ChassisDocument): ShareLink => {
  const link = `${address}#${key}${packText(saveDocument(document))}`;
  return link.length <= linkLimits.most
    ? { ok: true, link, isLong: link.length > linkLimits.warnAbove }
    : { ok: false, length: link.length };
};

/** What follows the # in a link of ours: the text of the document, or what is wrong with it. Null for anything else.
 *  Never throws. */
export const readShareLink = (hash: string): ReturnType<typeof unpackText> | null => {
  const bare = hash.replace(/^#/, '');
  if (!bare.startsWith(key)) return null;
  return unpackText(bare.slice(key.length), documentSizeLimit);
};
