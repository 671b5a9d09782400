// The SVG: well-formed by a strict XML parser that is not ours (saxes), whatever people wrote in their
// documents; clean; and equal to the drawing that was looked at.
import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, it } from 'vitest';
import { metadataForSvg, saveDocument } from '#document/index.ts';
import { documentTextFromSvg } from '#document/svg-metadata.ts';
import {
  buildDiagram,
  buildDisplayList,
  themeNames,
  toSvg,
  type Diagram,
  type DisplayList
} from '#drawing/index.ts';
import { roundedPath } from '#drawing/to-svg.ts';
import { buildStudy } from '#study/build-study.ts';
import { expectGolden } from '../helpers/golden.ts';
import { buildSmallSet } from './small-set.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

interface Parsed {
  readonly names: ReadonlySet<string>;
  readonly ids: readonly string[];
  readonly texts: readonly string[];
  readonly attributes: ReadonlySet<string>;
}

const parse = (svg: string): Parsed => {
  const names = new Set<string>();
  const ids: string[] = [];
  const texts: string[] = [];
  const attributes = new Set<string>();
  const parser = new SaxesParser({ xmlns: true });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    names.add(tag.local);
    for (const [name, { value }] of Object.entries(tag.attributes)) {
      attributes.add(name);
      if (name === 'id') ids.push(value);
    }
  });
  parser.on('text', (text) => texts.push(text));
  parser.write(svg).close();
  return { names, ids, texts, attributes };
};

let diagram: Diagram;
const document = buildSmallSet();

beforeAll(async () => {
  diagram = await buildDiagram(buildStudy(document), layoutEngine, {
    tries: 2,
    timeLimitMs: 60_000
  });
}, 60_000);

describe('the SVG of a diagram', () => {
  it('is well-formed, its ids once, in every theme', () => {
    const list = buildDisplayList(diagram, { findings: [] });
    for (const theme of themeNames) {
      const { ids } = parse(toSvg(list, { theme, title: 'Bench set' }));
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids).toContain('wire-w5');
      expect(ids).toContain('part-pv1');
    }
  });

  it('holds shapes and text only: no script, no style, nothing fetched', () => {
    const svg = toSvg(buildDisplayList(diagram, { findings: [] }), { title: 'Bench set' });
    const { names, attributes } = parse(svg);
    expect([...names].sort()).toEqual(
      ['circle', 'desc', 'g', 'path', 'polygon', 'polyline', 'rect', 'svg', 'text', 'title'].sort()
    );
    expect([...attributes].filter((name) => /^(on|style$|href|xlink)/.test(name))).toEqual([]);
    expect(svg).not.toMatch(/url\(|https?:(?!\/\/www\.w3\.org\/2000\/svg)/);
    expect(svg).not.toContain('NaN');
  });

  it('says what it is to those who cannot see it', () => {
    const svg = toSvg(buildDisplayList(diagram, { findings: [] }), {
      title: 'Bench set',
      description: 'Eleven wires'
    });
    expect(svg).toContain('role="img"');
    expect(svg).toContain('<title id="drawing-title">Bench set</title>');
    expect(svg).toContain('Eleven wires');
    expect(svg).toMatch(/<title>Wire 5, V2-5 to T1 blue, needs [^<]+<\/title>/);
  });

  it('carries the document, which can be read from it again', () => {
    const text = saveDocument(document);
    const svg = toSvg(buildDisplayList(diagram, { findings: [] }), {
      title: 'Bench set',
      metadata: metadataForSvg(text)
    });
    parse(svg);
    expect(documentTextFromSvg(svg)).toEqual({ ok: true, text });
  });

  it('looks as it did when it was looked at', () => {
    const list = buildDisplayList(diagram, { findings: [], date: '2 May 1957' });
    expectGolden(
      new URL('golden/small-set.svg', import.meta.url),
      toSvg(list, { title: 'Bench set' })
    );
  });
});

describe('text in the SVG', () => {
  const bounds = { x: 0, y: 0, width: 10, height: 10 };
  const listWith = (text: string): DisplayList => ({
    bounds,
    items: [
      {
        id: 'a',
        layer: 'parts',
        order: 0,
        style: 'note',
        shape: { kind: 'text', x: 1, y: 2, text, size: 2, anchor: 'start', face: 'sans' },
        subject: { kind: 'part', id: 'p1' },
        title: text
      }
    ]
  });

  it('comes back as it was written, but for what XML cannot hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        const { texts } = parse(toSvg(listWith(text), { title: text, description: text }));
        const expected = text
          // eslint-disable-next-line no-control-regex -- what XML 1.0 cannot hold
          .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
          .replace(/[\t\n\r]/g, ' ');
        const found = texts.filter((own) => own.trim() !== '' || own === expected);
        if (expected.trim() !== '') expect(found).toContain(expected);
      }),
      { seed: 2, numRuns: 400 }
    );
  });

  it('cannot become markup', () => {
    const svg = toSvg(listWith('</text><script>x()</script> "\' &amp; ]]>'), { title: '"><x' });
    const { names } = parse(svg);
    expect(names.has('script')).toBe(false);
    expect(names.has('x')).toBe(false);
  });

  it('survives half of a letter pair', () => {
    expect(() => parse(toSvg(listWith('a\ud800b'), { title: 't' }))).not.toThrow();
  });
});

describe('a rounded line', () => {
  it('keeps its ends, and never rounds more than half of a piece', () => {
    expect(roundedPath([0, 0, 10, 0, 10, 10], false, 2)).toBe('M0 0L8 0Q10 0 10 2L10 10');
    expect(roundedPath([0, 0, 2, 0, 2, 10], false, 5)).toBe('M0 0L1 0Q2 0 2 1L2 10');
    expect(roundedPath([0, 0, 5, 5], true, 0)).toBe('M0 0L5 5Z');
    expect(roundedPath([], false, 1)).toBe('');
  });
});
