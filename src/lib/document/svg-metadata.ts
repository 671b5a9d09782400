// The document that a drawing carries in its metadata, so that an exported SVG opens again.
// Our element is known by its namespace, whatever prefix another program gave it on saving.
import { documentSizeLimit } from './open-document.ts';
import { escapeXml, readXmlTokens, unescapeXml, XmlFault, type XmlToken } from './xml-tokens.ts';

export const documentNamespace = 'urn:underchassis:document:1';
const localName = 'document';

// eslint-disable-next-line no-control-regex -- the characters that XML cannot hold
const notInXml = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
const asJsonEscape = (character: string): string =>
  `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** The `<metadata>` element that carries a document. Goes inside the `<svg>` element as it is.
 *  @param documentText as `saveDocument` gives it */
export const metadataForSvg = (documentText: string): string => {
  const body = escapeXml(documentText.replaceAll(notInXml, asJsonEscape));
  return `<metadata><chassis:${localName} xmlns:chassis="${documentNamespace}">${body}</chassis:${localName}></metadata>`;
};

export type SvgDocumentText =
  | { readonly ok: true; readonly text: string }
  /** In words: what is wrong and the way out. */
  | { readonly ok: false; readonly problem: string };

type Prefixes = ReadonlyMap<string, string>;

const prefixesWith = (outer: Prefixes, attributes: ReadonlyMap<string, string>): Prefixes => {
  let prefixes: Map<string, string> | undefined;
  for (const [name, value] of attributes) {
    const prefix = name === 'xmlns' ? '' : name.startsWith('xmlns:') ? name.slice(6) : undefined;
    if (prefix === undefined) continue;
    prefixes ??= new Map(outer);
    prefixes.set(prefix, value);
  }
  return prefixes ?? outer;
};

const isOurs = (name: string, prefixes: Prefixes): boolean => {
  const [prefix, local] = name.includes(':') ? name.split(':', 2) : ['', name];
  return local === localName && prefixes.get(prefix ?? '') === documentNamespace;
};

/** The raw contents of all our elements. */
const collect = (tokens: Iterable<XmlToken>): string[] => {
  const open: { readonly name: string; readonly prefixes: Prefixes }[] = [];
  const found: string[] = [];
  /** How deep our element lies, while in it. */
  let inside: number | undefined;
  for (const token of tokens) {
    if (token.kind === 'text') {
      if (inside !== undefined) found.push((found.pop() ?? '') + token.text);
      continue;
    }
    if (token.kind === 'close') {
      const last = open.pop();
      if (last?.name !== token.name) {
        throw new XmlFault(`</${token.name}> closes nothing that is open`);
      }
      if (open.length === inside) inside = undefined;
      continue;
    }
    if (inside !== undefined) throw new XmlFault('the carried document holds tags');
    const prefixes = prefixesWith(open.at(-1)?.prefixes ?? new Map(), token.attributes);
    const ours = isOurs(token.name, prefixes);
    if (ours) found.push('');
    if (token.isEmpty) continue;
    if (ours) inside = open.length;
    open.push({ name: token.name, prefixes });
  }
  const left = open.at(-1);
  if (left) throw new XmlFault(`<${left.name}> is not closed: the file may be cut off`);
  return found;
};

/** The text of the document that an SVG carries, or why there is none. It is not parsed here. */
export const documentTextFromSvg = (svgText: string): SvgDocumentText => {
  if (svgText.length > 2 * documentSizeLimit) {
    return { ok: false, problem: 'the drawing is too large to have been made here' };
  }
  try {
    const found = collect(readXmlTokens(svgText.replace(/^\uFEFF/, '')));
    const [text] = found;
    if (text === undefined) {
      const problem =
        'the drawing carries no chassis document: open the *.chassis.json file that it was made from, or export the drawing again';
      return { ok: false, problem };
    }
    if (found.length > 1) {
      const problem = `the drawing carries ${found.length} chassis documents: export each as a drawing of its own`;
      return { ok: false, problem };
    }
    return { ok: true, text: unescapeXml(text) };
  } catch (error) {
    if (!(error instanceof XmlFault)) throw error;
    return { ok: false, problem: `the drawing cannot be read: ${error.message}` };
  }
};
