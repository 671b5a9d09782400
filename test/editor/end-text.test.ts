import { describe, expect, it } from 'vitest';
import { EndNames, endFieldsOf } from '#editor/schedule/end-text.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../helpers/chassis.ts';

const document = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .tube('V3', '6CG7', { at: [60, 60] })
  .strip('TS1', 5, { at: [120, 60] })
  .part('transformer', 'T1', ['red', 'green/yellow'])
  .ground('G2')
  .build();
const names = new EndNames(document, buildStudy(document).index);

describe('the end of a wire as it is typed', () => {
  it.each([
    ['V3-5', 'V3-5'],
    ['v3-5', 'V3-5'],
    ['V3 pin 5', 'V3-5'],
    ['V3:5', 'V3-5'],
    ['V3 #5', 'V3-5'],
    ['TS1 lug 2', 'TS1-2'],
    ['t1 RED', 'T1 red'],
    ['T1 green/yellow', 'T1 green/yellow'],
    ['G2', 'chassis at G2'],
    ['chassis at G2', 'chassis at G2']
  ])('%s is %s', (typed, label) => {
    expect(names.read(typed)).toMatchObject({ kind: 'terminal', label });
  });

  it('does not take V3-5 for pin 5 of another part, nor V35', () => {
    expect(names.read('V35').kind).toBe('words');
    expect(names.read('V31-5').kind).toBe('words');
  });

  it('keeps what names no terminal as it was written, and says why', () => {
    expect(names.read('V3-12')).toEqual({
      kind: 'words',
      text: 'V3-12',
      why: 'V3 has no such terminal; it has 1, 2, 3, 4, 5, 6, 7, 8 …'
    });
    expect(names.read('T1')).toMatchObject({
      why: 'which terminal of T1? It has red, green/yellow'
    });
    expect(names.read('brown, into the loom')).toMatchObject({
      text: 'brown, into the loom',
      why: 'no part of that name'
    });
  });

  it.each(['', '  ', '?'])('"%s" is an open end', (typed) => {
    expect(names.read(typed)).toEqual({ kind: 'open' });
  });

  it('says what each reading makes of a wire', () => {
    expect(endFieldsOf(names.read('V3-5'))).toMatchObject({ as: null, known: 'seen' });
    expect(endFieldsOf(names.read('loom'))).toEqual({ at: null, as: 'loom', known: 'unknown' });
    expect(endFieldsOf(names.read(''))).toEqual({ at: null, as: null, known: 'unknown' });
  });

  it('suggests the terminals that begin so', () => {
    expect(names.suggest('ts')).toEqual(['TS1-1', 'TS1-2', 'TS1-3', 'TS1-4', 'TS1-5']);
    expect(names.suggest('')).toEqual([]);
  });
});
