// The document that a one-file page carries, so that the page opens in the tool again.
import { documentSizeLimit } from './open-document.ts';
import { packText, unpackText, type Unpacked } from './packed-text.ts';

const blockId = 'chassis-document';
const typeOfBlock = 'application/vnd.underchassis';

/** The element that carries a document. It holds letters and figures alone, so that nothing in it is markup.
 *  @param documentText as `saveDocument` gives it */
export const blockForPage = (documentText: string): string =>
  `<script type="${typeOfBlock}" id="${blockId}">${packText(documentText)}</script>`;

/** True for the text of a page, ours or another. */
export const isPage = (start: string): boolean =>
  /^\uFEFF?\s*<(?:!doctype\s+html|html)\b/i.test(start);

/** The text of the document in a page that this program wrote. */
export const documentTextFromPage = (page: string): Unpacked => {
  const [, letters] =
    new RegExp(`<script[^>]*\\sid="?${blockId}"?[^>]*>\\s*([\\w-]*)\\s*</script>`).exec(page) ?? [];
  if (letters === undefined) return { ok: false, problem: 'it is a page without a chassis in it' };
  return unpackText(letters, documentSizeLimit);
};
