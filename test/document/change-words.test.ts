// What changed from one state to another, in words; and a state put in place of another as one step of undo.
import {
  applyEdit,
  changeInWords,
  emptyHistory,
  replaceDocument,
  saveDocument,
  setWireFields,
  shareStructure,
  undo,
  type ChassisDocument,
  type Edit
} from '#document/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { chassis } from '../helpers/chassis.ts';

const set = chassis('Bench set')
  .tube('V1', '6CG7')
  .wire(1, 'V1-5', null, { awg: 22 })
  .wire(2, 'V1-4', 'V1-5')
  .build();
const edited = (document: ChassisDocument, ...edits: Edit[]): ChassisDocument =>
  edits.reduce((current, edit) => {
    const result = applyEdit(current, edit);
    if (!result.ok) throw new Error(result.problem);
    return result.document;
  }, document);
const copyOf = (document: ChassisDocument): ChassisDocument =>
  JSON.parse(saveDocument(document)) as ChassisDocument;

describe('what changed', () => {
  it.each<[string, Edit[], string[]]>([
    ['nothing', [], []],
    [
      'a field',
      [setWireFields('w1', { found: { awg: 20, colour: 'blue' } })],
      ['wire 1 changed: gauge, colour']
    ],
    [
      'two wires',
      [setWireFields('w1', { notes: 'a' }), setWireFields('w2', { notes: 'b' })],
      ['2 wires (1, 2) changed']
    ],
    [
      'a wire gone and the title changed',
      [
        { kind: 'remove-wire', args: { id: 'w2' } },
        { kind: 'change-identity', args: { fields: { title: 'Other' } } }
      ],
      ["the set's title changed", 'wire 2 removed']
    ]
  ])('%s', (_name, edits, words) => {
    expect(changeInWords(set, copyOf(edited(set, ...edits)))).toEqual(words);
  });

  it('is counted where it is much', () => {
    const wires = Object.fromEntries(
      Array.from({ length: 6 }, (_, n) => [`x${n}`, { number: `${n}` }])
    );
    expect(changeInWords({ wires: {} }, { wires })).toEqual(['6 wires added']);
  });

  it('is told of any two documents, and of what is no document', () => {
    fc.assert(
      fc.property(arbitraryDocument(3), arbitraryDocument(3), (a, b) => {
        expect(changeInWords(a, a)).toEqual([]);
        const words = changeInWords(a, b);
        expect(words.every((word) => word.length > 0)).toBe(true);
        expect(changeInWords(null, b).length).toBeGreaterThan(0);
      }),
      { seed: 3, numRuns: 50 }
    );
  });
});

describe('a document read again', () => {
  it('shares all with the one in the hand but what differs', () => {
    const later = copyOf(edited(set, setWireFields('w1', { notes: 'a' })));
    const shared = shareStructure(set, later);
    expect(shared).toEqual(later);
    expect(shared.parts).toBe(set.parts);
    expect(shared.wires['w2']).toBe(set.wires['w2']);
    expect(shared.wires['w1']).not.toBe(set.wires['w1']);
    expect(shareStructure(set, copyOf(set))).toBe(set);
  });
});

describe('a state in place of another', () => {
  it('is one step of undo, for any two states', () => {
    fc.assert(
      fc.property(arbitraryDocument(3), arbitraryDocument(3), (before, other) => {
        const wanted = { ...other, id: before.id };
        const done = replaceDocument(before, emptyHistory, wanted, 'go back', 0);
        expect(done.document).toEqual(wanted);
        const back = undo(done.document, done.history);
        expect(back?.name).toBe('go back');
        expect(back?.document).toEqual(before);
      }),
      { seed: 4, numRuns: 50 }
    );
  });

  it('is no step where nothing differs', () => {
    const done = replaceDocument(set, emptyHistory, copyOf(set), 'go back', 0);
    expect(done).toEqual({ document: set, history: emptyHistory });
  });
});
