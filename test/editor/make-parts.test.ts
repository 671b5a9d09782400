import { describe, expect, it } from 'vitest';
import {
  applyEdit,
  buildEmptyDocument,
  makeIdFrom,
  type ChassisDocument
} from '#document/index.ts';
import { addElement, setWireFields } from '#document/edits.ts';
import { buildPartsEdit, findWrittenEnds } from '#editor/schedule/make-parts.ts';
import { buildNewWire } from '#editor/schedule/new-wire.ts';
import { buildStudy } from '#study/index.ts';
import { seeded } from '../helpers/generate-chassis.ts';

const makeId = makeIdFrom(seeded(21));

/** An empty chassis with one wire for each pair of ends, as they were typed. */
const typed = (...pairs: readonly (readonly [string, string])[]): ChassisDocument => {
  let document = buildEmptyDocument({ title: 'Bench set', makeId });
  for (const [from, to] of pairs) {
    const wire = buildNewWire(document, makeId);
    for (const edit of [
      addElement('wire', wire),
      setWireFields(wire.id, { from: { as: from }, to: { as: to } })
    ]) {
      const applied = applyEdit(document, edit);
      if (!applied.ok) throw new Error(applied.problem);
      document = applied.document;
    }
  }
  return document;
};

const made = (document: ChassisDocument): ChassisDocument => {
  const ends = findWrittenEnds(buildStudy(document).index.wires);
  const edit = buildPartsEdit(document, ends, makeId);
  if (edit === null) throw new Error('nothing to make');
  const applied = applyEdit(document, edit);
  if (!applied.ok) throw new Error(applied.problem);
  return applied.document;
};

const endsOf = (document: ChassisDocument): string[] => {
  const { index } = buildStudy(document);
  return index.wires.map((wire) => `${index.labelOf(wire.from)} to ${index.labelOf(wire.to)}`);
};

describe('parts made of the ends that were typed', () => {
  it('stand where a wire list would have put them, each part once', () => {
    const document = made(
      typed(['V1 (6CG7) pin 1', 'TS1-2'], ['V1-6', 'TS1 lug 4'], ['T1 red', 'v1-3'])
    );
    expect(endsOf(document)).toEqual(['V1-1 to TS1-2', 'V1-6 to TS1-4', 'T1 red to V1-3']);
    const parts = Object.values(document.parts).map(({ reference, kind, type }) => [
      reference,
      kind,
      type
    ]);
    expect(parts).toEqual([
      ['V1', 'tube', '6CG7'],
      ['TS1', 'terminal strip', undefined],
      ['T1', 'transformer', undefined]
    ]);
  });

  it('give a part that is there the terminal that it lacks, and no second part', () => {
    const first = made(typed(['T1 red', 'TS1-2']));
    const wire = buildNewWire(first, makeId);
    const more = [
      addElement('wire', wire),
      setWireFields(wire.id, { from: { as: 'T1 blue' }, to: { as: 'TS1-1' } })
    ].reduce((document, edit) => {
      const applied = applyEdit(document, edit);
      if (!applied.ok) throw new Error(applied.problem);
      return applied.document;
    }, first);
    const document = made(more);
    expect(endsOf(document)).toEqual(['T1 red to TS1-2', 'T1 blue to TS1-1']);
    expect(Object.keys(document.parts)).toHaveLength(2);
  });

  it('leave alone what names no terminal, and what is uncertain', () => {
    const document = typed(['into the loom', 'V3-5?'], ['?', 'V3']);
    expect(findWrittenEnds(buildStudy(document).index.wires)).toEqual([]);
  });
});
