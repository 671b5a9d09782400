import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildShareCopy,
  openDocument,
  saveDocument,
  type ChassisDocument
} from '#document/index.ts';
import { buildShareLink, linkLimits, readShareLink } from '#storage/index.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';

const address = 'https://club.example/underchassis/';
const opened = (path: string): ChassisDocument => {
  const result = openDocument(readFileSync(path, 'utf8'), path);
  if (!result.ok) throw new Error(path);
  return result.document;
};
const hashOf = (link: string): string => new URL(link).hash;

describe('a link', () => {
  it('opens as the document that went in, byte for byte', () => {
    fc.assert(
      fc.property(arbitraryDocument(3), (document) => {
        const made = buildShareLink(address, document);
        if (!made.ok) return;
        const read = readShareLink(hashOf(made.link));
        expect(read).toEqual({ ok: true, text: saveDocument(document) });
      }),
      { seed: 31, numRuns: 60 }
    );
  });

  it('holds both demonstrations, the larger with a warning', () => {
    const television = buildShareLink(
      address,
      buildShareCopy(opened('static/demonstrations/console-21.chassis.json'))
    );
    expect(television.ok && television.isLong).toBe(true);
    expect(television.ok && television.link.length).toBeLessThanOrEqual(linkLimits.most);
    const radio = buildShareLink(
      address,
      buildShareCopy(opened('static/demonstrations/five-tube-radio.chassis.json'))
    );
    expect(radio.ok && radio.isLong).toBe(false);
  });

  it('is not made where it would be too long', () => {
    const made = buildShareLink(address, generateChassis(1000));
    expect(made.ok).toBe(false);
    expect(!made.ok && made.length).toBeGreaterThan(linkLimits.most);
  });

  it('that was cut or is of something else is told', () => {
    const made = buildShareLink(
      address,
      opened('static/demonstrations/five-tube-radio.chassis.json')
    );
    if (!made.ok) throw new Error('too long');
    const { link } = made;
    expect(readShareLink('')).toBeNull();
    expect(readShareLink('#findings')).toBeNull();
    const cut = readShareLink(hashOf(link).slice(0, 2000));
    expect(cut).toMatchObject({ ok: false, problem: expect.stringMatching(/cut off/) as string });
  });
});
