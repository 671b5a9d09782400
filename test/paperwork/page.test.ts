// The one-file page: what is in it, and that nothing of the document becomes markup or script. How it works is
// looked at in a browser (test/e2e/share.spec.ts).
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import {
  documentTextFromPage,
  openDocument,
  packText,
  saveDocument,
  unpackText,
  type ChassisDocument
} from '#document/index.ts';
import { buildPictorial } from '#drawing/index.ts';
import { openFileBytes } from '#intake/index.ts';
import { buildPage } from '#paperwork/index.ts';
import { buildStudy } from '#study/index.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { chassis } from '../helpers/chassis.ts';

const pageOf = (document: ChassisDocument): string => {
  const study = buildStudy(document);
  const findings = runChecks(study);
  const list = buildPictorial(study, { findings, withFoot: false });
  return buildPage(study, findings, { drawings: [{ name: 'To scale', list }], date: '2026-01-02' });
};

const television = (): ChassisDocument => {
  const text = readFileSync('static/demonstrations/console-21.chassis.json', 'utf8');
  const opened = openDocument(text, 'television');
  if (!opened.ok) throw new Error('the television does not open');
  return opened.document;
};

describe('a one-file page', () => {
  it('opens again as the document that it was made of', () => {
    fc.assert(
      fc.property(arbitraryDocument(3), (document) => {
        const found = documentTextFromPage(pageOf(document));
        expect(found.ok && found.text).toBe(saveDocument(document));
      }),
      { seed: 21, numRuns: 25 }
    );
    const document = television();
    const opened = openFileBytes(new TextEncoder().encode(pageOf(document)), 'tv.html', () => 'x0');
    expect(opened.ok && opened.from).toBe('page');
    expect(opened.ok && opened.document).toEqual(document);
  });

  it('has a policy that names its own script and style by their hashes and nothing else', () => {
    const page = pageOf(television());
    const [, policy = ''] =
      /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page) ?? [];
    const hash = (text = '') => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
    const scripts = [...page.matchAll(/<script>([\s\S]*?)<\/script>/g)];
    const styles = [...page.matchAll(/<style>([\s\S]*?)<\/style>/g)];
    expect([scripts.length, styles.length]).toEqual([1, 1]);
    expect(policy).toBe(
      `default-src 'none'; script-src ${hash(scripts[0]?.[1])}; style-src ${hash(styles[0]?.[1])}; img-src data:; base-uri 'none'; form-action 'none'`
    );
    expect(page).not.toMatch(/(?:src|href)="(?!data:|#)/);
    expect(page).not.toMatch(/\son\w+=|\sstyle=/);
  });

  it('takes hostile names for what they are', () => {
    const bad = `</script><script>alert(1)</script><img src=x onerror="alert(2)">"'&`;
    const document = chassis({ title: bad, chassis: bad, tracedBy: bad })
      .tube('V1', bad, { function: bad })
      .strip('TS1', 2)
      .wire(1, 'V1-1', 'TS1-1', { function: bad, colour: bad, dcV: 900, ratingV: 300 })
      .wire(2, 'V1-2', null, { toEnd: { as: bad } })
      .build();
    document.wires['w1']!.dress = bad;
    document.wires['w1']!.number = bad;
    document.proof = {
      readings: { [bad]: { typed: bad, where: bad } },
      records: { a: { b: bad } }
    };
    const page = pageOf(document);
    expect(page).not.toContain('<img');
    expect([...page.matchAll(/<script/g)].length).toBe([...page.matchAll(/<\/script>/g)].length);
    expect([...page.matchAll(/<script\b/g)]).toHaveLength(4);
    expect(page).toContain('&lt;img src=x');
    const found = documentTextFromPage(page);
    expect(found.ok && found.text).toBe(saveDocument(document));
  });

  it('shows what was measured, with what stands beside it', () => {
    const document = chassis('Set').tube('V1', '6CG7').wire(1, 'V1-1', 'V1-2').build();
    document.proof = {
      readings: { 'power-up V1-1': { typed: '287 V', where: 'V1-1', on: '2026-01-02' } },
      records: { 'power-up': { 'line volts': '117 V', meter: '20 kilohm per volt' } }
    };
    const page = pageOf(document);
    for (const words of ['287 V', 'power up, line volts: 117 V', 'meter: 20 kilohm per volt'])
      expect(page).toContain(words);
  });
});

describe('packed text', () => {
  it('comes back as it went in, in letters that an address may hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (text) => {
        const packed = packText(text);
        expect(packed).toMatch(/^[A-Za-z0-9_-]+$/);
        expect(unpackText(packed, 1e6)).toEqual({ ok: true, text });
      }),
      { seed: 22, numRuns: 200 }
    );
  });

  it('that is cut off, changed or blown up is told, never half read', () => {
    const packed = packText(saveDocument(television()));
    expect(unpackText(packed.slice(0, -20), 1e7).ok).toBe(false);
    expect(unpackText('', 1e7).ok).toBe(false);
    expect(unpackText('d%%%', 1e7).ok).toBe(false);
    expect(unpackText('zAAAA', 1e7)).toMatchObject({
      problem: expect.stringMatching(/newer version/) as string
    });
    expect(unpackText(packText('a'.repeat(5_000_000)), 1_000_000)).toMatchObject({
      problem: expect.stringMatching(/more than 0 MB|unpacks to more/) as string
    });
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(typeof unpackText(text, 1000).ok).toBe('boolean');
      }),
      { seed: 23, numRuns: 300 }
    );
  });
});
