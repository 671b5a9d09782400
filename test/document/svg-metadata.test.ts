// The document in a drawing: it comes out as it went in, whatever another program did to the markup.
import {
  documentTextFromSvg,
  metadataForSvg,
  openDocument,
  saveDocument
} from '#document/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const text = saveDocument(
  chassis('Q & A <set>').wire(1, null, null, { notes: ']]> " \' é 𝄞' }).build()
);
const svg = (metadata: string) =>
  `<?xml version="1.0"?>\n<!DOCTYPE svg [<!ELEMENT x ANY>]>\n<svg xmlns="http://www.w3.org/2000/svg"><title>a &gt; b</title>${metadata}<path d="M0 0"/></svg>`;
const ours = 'urn:underchassis:document:1';

describe('the document in a drawing', () => {
  it('comes out as it went in', () => {
    expect(documentTextFromSvg(svg(metadataForSvg(text)))).toEqual({ ok: true, text });
  });

  it('may hold any text that JSON can', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (words) => {
        const json = JSON.stringify({ words });
        const found = documentTextFromSvg(svg(metadataForSvg(json)));
        expect(found.ok && JSON.parse(found.text)).toEqual({ words });
      }),
      { seed: 4, numRuns: 500 }
    );
    const found = documentTextFromSvg(svg(metadataForSvg('"\uFFFE\uFFFF\u000B"')));
    expect(found).toEqual({ ok: true, text: '"\\ufffe\\uffff\\u000b"' });
  });

  // XML 1.0, 2.4 and 4.1: other ways of writing the same text. Namespaces in XML 1.0, 3 and 6.
  it.each([
    [
      'another prefix, declared further out',
      `<g xmlns:n="${ours}"><n:document>{"a":"&lt;"}</n:document></g>`
    ],
    ['no prefix', `<document xmlns='${ours}'>{"a":"&#60;"}</document>`],
    ['CDATA', `<d:document xmlns:d="${ours}"><![CDATA[{"a":"<"}]]></d:document>`],
    ['numbers', `<d:document xmlns:d="${ours}" x="a>b">{&quot;a&#x22;:"&#x3C;"}</d:document >`],
    [
      'a comment before',
      `<!-- <d:document xmlns:d="${ours}">no</d:document> --><d:document xmlns:d="${ours}">{"a":"&lt;"}</d:document>`
    ],
    ['a comment inside', `<d:document xmlns:d="${ours}">{"a":<!-- x -->"&lt;"}</d:document>`]
  ])('is found with %s', (_, markup) => {
    expect(documentTextFromSvg(svg(markup))).toEqual({ ok: true, text: '{"a":"<"}' });
  });

  it.each([
    ['none', '', 'carries no chassis document'],
    [
      'a namespace that only looks like ours',
      `<d:document xmlns:d="${ours}0">x</d:document>`,
      'carries no'
    ],
    ['a prefix without its namespace', '<chassis:document>x</chassis:document>', 'carries no'],
    [
      'a declaration that ended',
      `<g xmlns:d="${ours}"></g><d:document>x</d:document>`,
      'carries no'
    ],
    ['two', metadataForSvg('1') + metadataForSvg('2'), 'carries 2 chassis documents'],
    ['tags in it', `<d:document xmlns:d="${ours}"><script>1</script></d:document>`, 'holds tags'],
    [
      'an entity of its own',
      `<d:document xmlns:d="${ours}">&x;</d:document>`,
      'no entity that XML knows'
    ],
    [
      'a bare ampersand',
      `<d:document xmlns:d="${ours}">& </d:document>`,
      'no entity that XML knows'
    ],
    ['a tag that does not close', '<g', 'is not closed'],
    ['a comment that does not end', '<!-- x', 'does not end'],
    ['wrong nesting', '<g><a></g></a>', 'closes nothing']
  ])('is refused with %s', (_, markup, words) => {
    const found = documentTextFromSvg(svg(markup));
    expect(found.ok ? 'no problem' : found.problem).toContain(words);
  });

  it('is missed where the drawing was cut off', () => {
    const whole = svg(metadataForSvg(text));
    for (let end = whole.length - 1; end > 0; end -= 97) {
      expect(documentTextFromSvg(whole.slice(0, end)).ok).toBe(false);
    }
  });

  it('does not take time without end on markup made to hurt', () => {
    for (const bad of [
      '<a '.repeat(50_000),
      '<a' + ' b="c"'.repeat(50_000),
      '&'.repeat(200_000),
      '<!--'.repeat(50_000),
      '<g>'.repeat(50_000)
    ]) {
      const start = performance.now();
      documentTextFromSvg(svg(bad));
      expect(performance.now() - start).toBeLessThan(2000);
    }
  });

  it('opens', () => {
    const found = documentTextFromSvg(svg(metadataForSvg(text)));
    expect(found.ok && openDocument(found.text, 'x.svg')).toMatchObject({ ok: true });
  });
});
