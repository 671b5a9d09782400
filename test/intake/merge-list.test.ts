// A second list comes into a chassis that is open: what it says is taken, what it does not say stays.
import { describe, expect, it } from 'vitest';
import { applyEdit, documentSchema, makeIdFrom, type ChassisDocument } from '#document/index.ts';
import { mergeEdit, planMerge, readWireList } from '#intake/index.ts';
import { runsOf, seededRandom, wireOf } from './read-list.ts';

const makeId = makeIdFrom(seededRandom(5));
const read = (...lines: string[]): ChassisDocument => {
  const { document } = readWireList(lines.join('\n'), { fileName: 'list.csv', makeId });
  if (!document) throw new Error('no wire was read');
  return document;
};
const open = read(
  'No,From,To,Colour,DC V,Notes',
  '1,V1-2,TS1-1,red,285,brittle',
  '2,V1-3,TS1-2,blue,,',
  '3,chassis,TS1-3,black,,'
);
const merge = (list: ChassisDocument, hasNumbers = true, onto = open) => {
  const plan = planMerge(onto, list, { hasNumbers });
  const edit = mergeEdit(plan, 'bring in list.csv', () => true);
  const applied = edit === null ? null : applyEdit(onto, edit);
  if (applied?.ok === false) throw new Error(applied.problem);
  const document = applied === null ? onto : applied.document;
  documentSchema.parse(document);
  return { plan, document, kinds: plan.wires.map(({ number, kind }) => `${number} ${kind}`) };
};

describe('a second list', () => {
  it('of the same wires changes nothing', () => {
    const again = read(
      'No,From,To,Colour,DC V,Notes',
      '1,V1-2,TS1-1,red,285,brittle',
      '2,V1-3,TS1-2,blue,,',
      '3,chassis,TS1-3,black,,'
    );
    const { plan, document } = merge(again);
    expect(plan.wires.map(({ kind }) => kind)).toEqual(['same', 'same', 'same']);
    expect(plan.needed).toEqual([]);
    expect(document).toBe(open);
  });

  it('is matched by number: new, changed, the same, and what it does not name', () => {
    const { plan, kinds, document } = merge(
      read('Wire,From,To,Colour', '#1,V1-2,TS1-1,red/white', '2,V1-3,TS1-2,', '7,V2-1,TS1-4,green')
    );
    expect(kinds).toEqual(['1 changed', '2 same', '7 new']);
    expect(plan.staying.map((id) => open.wires[id]?.number)).toEqual(['3']);
    expect(wireOf(document, '1')).toMatchObject({
      found: { colour: 'red', tracer: 'white' },
      carries: { dcV: 285 },
      notes: 'brittle'
    });
    expect(runsOf(document)).toContain('7 V2-1 > TS1-4');
    expect(plan.needed.map(({ name }) => name).sort()).toEqual(['TS1-4', 'V2']);
    expect(
      Object.values(document.parts)
        .map(({ reference }) => reference)
        .sort()
    ).toEqual(['TS1', 'V1', 'V2', 'chassis 1'].sort());
  });

  it('moves an end and keeps what was written of the wire', () => {
    const { document } = merge(read('No,From,To,Notes', '2,V1-3,TS1-9,moved'));
    expect(runsOf(document)).toContain('2 V1-3 > TS1-9');
    expect(wireOf(document, '2')).toMatchObject({ found: { colour: 'blue' }, notes: 'moved' });
  });

  it('written from the other end is the same wire', () => {
    expect(merge(read('No,From,To', '1,TS1-1,V1-2', '3,TS1-3,chassis')).kinds).toEqual([
      '1 same',
      '3 same'
    ]);
  });

  it('that does not know an end leaves the one that is known', () => {
    const { kinds, document } = merge(read('No,From,To,Colour', '1,?,TS1-1,red'));
    expect(kinds).toEqual(['1 same']);
    expect(runsOf(document)).toContain('1 V1-2 > TS1-1');
  });

  it('without numbers is matched by both ends, and counts on', () => {
    const { kinds } = merge(read('From,To,Colour', 'V1-2,TS1-1,red', 'V1-4,TS1-1,pink'), false);
    expect(kinds).toEqual(['1 same', '4 new']);
  });

  it('says a number twice: the second is a wire of its own', () => {
    const { kinds } = merge(read('No,From,To', '1,V1-2,TS1-1', '1,V1-2,TS1-2'));
    expect(kinds).toEqual(['1 same', '1 new']);
  });

  it('gives a point of the metal a name that is free', () => {
    const { document } = merge(read('No,From,To', '9,chassis,TS1-1'));
    expect(runsOf(document)).toContain('9 chassis 2 > TS1-1');
  });

  it('puts parts of another unit there, and does not take them for one of the same name', () => {
    const { document, plan } = merge(
      read('No,From,From unit,To,To unit', '20,V1-2,Tuner,TS1-1,Main chassis')
    );
    expect(Object.values(document.units).map(({ name }) => name)).toEqual([
      'Main chassis',
      'Tuner'
    ]);
    expect(
      Object.values(document.parts).filter(({ reference }) => reference === 'V1')
    ).toHaveLength(2);
    expect(plan.needed.map(({ kind }) => kind)).toContain('unit');
  });

  it('tells of a tube of another type and keeps the one that is there', () => {
    const typed = read('No,From,To', '1,V3 (6CG7) pin 2,TS1-1');
    const { plan } = merge(read('No,From,To', '1,V3 (6SN7GT) pin 2,TS1-1'), true, typed);
    expect(plan.notes).toEqual(['V3 is a 6CG7 here and a 6SN7GT in the list: it stays as it is']);
  });

  it('takes only what was chosen, and only the parts for it', () => {
    const list = read('No,From,To', '7,V2-1,TS1-4', '8,V8-1,TS1-5');
    const plan = planMerge(open, list, { hasNumbers: true });
    const seventh = plan.wires[0]?.id;
    const edit = mergeEdit(plan, 'bring in', ({ id }) => id === seventh);
    const applied = edit && applyEdit(open, edit);
    expect(applied?.ok && runsOf(applied.document)).toEqual([...runsOf(open), '7 V2-1 > TS1-4']);
    expect(
      applied?.ok &&
        Object.values(applied.document.parts).some(({ reference }) => reference === 'V8')
    ).toBe(false);
  });
});
