// Takes XML apart into tags and text, as far as reading our own metadata out of a drawing needs it, in Node
// as in the browser. Nothing is evaluated, fetched or expanded.
// Source: W3C, Extensible Markup Language (XML) 1.0, 5th edition: 2.4, 2.5, 2.6, 2.7, 2.8, 3.1, 4.1.

export type XmlToken =
  | {
      readonly kind: 'open';
      readonly name: string;
      readonly attributes: ReadonlyMap<string, string>;
      /** The element is empty: no closing tag follows. */
      readonly isEmpty: boolean;
    }
  | { readonly kind: 'close'; readonly name: string }
  | { readonly kind: 'text'; readonly text: string };

/** The text is not XML. `message` says what and at which character. */
export class XmlFault extends Error {
  override name = 'XmlFault';
}

const namedEntities: Readonly<Record<string, string>> = {
  lt: '<',
  gt: '>',
  amp: '&',
  quot: '"',
  apos: "'"
};

const characterOf = (code: number): string | undefined =>
  Number.isInteger(code) && code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : undefined;

/** Text with its character references and the five entities of XML resolved, line ends as one \n. */
export const unescapeXml = (text: string): string =>
  text.replaceAll(/\r\n?/g, '\n').replaceAll(/&([^;&]{0,12});?/g, (all, name: string) => {
    const digits = /^#(?:x([0-9a-fA-F]+)|(\d+))$/.exec(name);
    const code = digits?.[1] === undefined ? Number(digits?.[2]) : parseInt(digits[1], 16);
    const character = digits
      ? characterOf(code)
      : Object.hasOwn(namedEntities, name)
        ? namedEntities[name]
        : undefined;
    if (character === undefined || !all.endsWith(';')) {
      throw new XmlFault(`"${all}" is no entity that XML knows`);
    }
    return character;
  });

/** Text that stands for itself between two tags. */
export const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const attributePattern = /([^\s=/"'<>]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const tagPattern = /<(\/?)([^\s/<>"'=]+)((?:[^<>"']|"[^"]*"|'[^']*')*?)(\/?)>/y;
/** Markup that is passed over: a comment, an instruction to a program, the document type. */
const passedOver = [
  ['<!--', /-->/g],
  ['<?', /\?>/g],
  ['<!DOCTYPE', /(?:\[[^\]]*\]\s*)?>/g]
] as const;

const attributesOf = (text: string): Map<string, string> => {
  const attributes = new Map<string, string>();
  for (const [, name = '', double, single] of text.matchAll(attributePattern)) {
    attributes.set(name, unescapeXml(double ?? single ?? ''));
  }
  return attributes;
};

/** The tags and texts in order. Throws `XmlFault` where it cannot go on. */
export function* readXmlTokens(xml: string): Generator<XmlToken> {
  const endOf = (pattern: RegExp, from: number): number => {
    pattern.lastIndex = from;
    const match = pattern.exec(xml);
    if (!match) throw new XmlFault(`what begins at character ${from + 1} does not end`);
    return match.index + match[0].length;
  };
  let at = 0;
  while (at < xml.length) {
    if (xml.charAt(at) !== '<') {
      const next = xml.indexOf('<', at);
      const end = next === -1 ? xml.length : next;
      yield { kind: 'text', text: xml.slice(at, end) };
      at = end;
      continue;
    }
    const over = passedOver.find(([start]) => xml.startsWith(start, at));
    if (over) {
      at = endOf(over[1], at);
      continue;
    }
    if (xml.startsWith('<![CDATA[', at)) {
      const end = endOf(/\]\]>/g, at);
      yield { kind: 'text', text: escapeXml(xml.slice(at + 9, end - 3)) };
      at = end;
      continue;
    }
    tagPattern.lastIndex = at;
    const tag = tagPattern.exec(xml);
    if (!tag) throw new XmlFault(`the tag at character ${at + 1} is not closed`);
    const [all, slash, name = '', attributes = '', end] = tag;
    at += all.length;
    if (slash === '/') yield { kind: 'close', name };
    else yield { kind: 'open', name, attributes: attributesOf(attributes), isEmpty: end === '/' };
  }
}
