import { describe, expect, it } from 'vitest';
import { makeIdFrom, saveDocument } from '#document/index.ts';
import { openFileBytes } from '#intake/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { seeded } from '../helpers/generate-chassis.ts';

const makeId = makeIdFrom(seeded(3));
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const open = (text: string, name: string) => openFileBytes(bytesOf(text), name, makeId);
const document = chassis('Bench set')
  .unit('Main chassis')
  .tube('V1', '6CG7')
  .strip('TS1', 3)
  .wire(12, 'V1-1', 'TS1-2', { dcV: 285 })
  .build();

describe('opening a file', () => {
  it('opens a saved document as it was', () => {
    const opened = open(saveDocument(document), 'bench.chassis.json');
    expect(opened).toMatchObject({ ok: true, from: 'document', notes: [] });
    expect(opened.ok && opened.document.wires).toEqual(document.wires);
  });

  it('opens a wire list, and tells what it noticed', () => {
    const opened = open(
      'No;From;To;Colour;AWG\n1;V1-5;TS1-2;red;22\n2;V1-4;TS1-3;blue;thick\n',
      'list.csv'
    );
    expect(opened).toMatchObject({ ok: true, from: 'wire list' });
    if (!opened.ok) return;
    expect(Object.values(opened.document.wires).map(({ number }) => number)).toEqual(['1', '2']);
    expect(opened.notes.join('\n')).toMatch(/thick/);
  });

  it('tells a document by its content, whatever its name', () => {
    expect(open(saveDocument(document), 'renamed.txt').ok).toBe(true);
  });

  it.each([
    ['', 'empty.csv', 'it is empty'],
    ['{ "format": "underchassis", ', 'half.chassis.json', ''],
    ['{"format":"something else"}', 'other.json', ''],
    ['<svg xmlns="http://www.w3.org/2000/svg"/>', 'plain.svg', ''],
    ['PK\u0003\u0004', 'zip.json', 'the content is not what the name says'],
    ['just some words', 'letter.txt', '']
  ])('opens nothing of %j, and says what is wrong, where, and the way out', (text, name, wrong) => {
    const opened = open(text, name);
    expect(opened.ok).toBe(false);
    if (opened.ok) return;
    expect(opened.problems.length).toBeGreaterThan(0);
    for (const problem of opened.problems) {
      expect(problem.place).not.toBe('');
      expect(problem.wrong).not.toBe('');
      expect(problem.wayOut).not.toBe('');
    }
    expect(opened.problems.map((problem) => problem.wrong).join()).toContain(wrong);
  });
});
