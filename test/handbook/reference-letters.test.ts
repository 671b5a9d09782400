import { describe, expect, test } from 'vitest';
import { partKinds } from '#document/index.ts';
import { findReferenceLetter, partKindOf, referenceLetters } from '#handbook/index.ts';

// Common practice, no source: letters as North American service data use them.
describe('reference letters', () => {
  test.each([
    ['V7', 'tube'],
    ['v10a', 'tube'],
    ['T1', 'transformer'],
    ['TS2', 'terminal strip'],
    ['E4', 'terminal strip'],
    ['R12', 'resistor'],
    ['C3A', 'capacitor'],
    ['L9', 'coil'],
    ['P1', 'plug'],
    ['J12', 'jack'],
    ['S1', 'switch'],
    ['SW2', 'switch'],
    ['F1', 'fuse'],
    ['X1', 'other'],
    ['LS1', 'speaker'],
    ['SP-1', 'speaker'],
    ['CR1', 'rectifier'],
    ['SR2', 'rectifier'],
    ['I1', 'lamp'],
    ['VR3', 'control'],
    ['CRT', 'picture tube'],
    ['tuner', 'other'],
    ['yoke', 'yoke'],
    ['picture tube', 'picture tube'],
    ['volume control', 'control'],
    ['line cord', 'plug'],
    ['dial lamp', 'lamp'],
    ['yoke plug', 'plug'],
    ['crt socket', 'picture tube'],
    ['damper tube', 'tube'],
    ['G3', 'ground lug'],
    ['', 'other']
  ])('%s is a %s', (reference, kind) => expect(partKindOf(reference)).toBe(kind));

  test('kinds are words of the document, letters stand once', () => {
    for (const { kind } of referenceLetters) expect(partKinds).toContain(kind);
    const letters = referenceLetters.map((row) => row.letters);
    expect(new Set(letters).size).toBe(letters.length);
  });

  test('a word is no reference', () => {
    expect(findReferenceLetter('TUNER')).toBeNull();
    expect(findReferenceLetter('12')).toBeNull();
  });
});
