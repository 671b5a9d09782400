// Each kind of edit: what it does, what it refuses, and what happens to those that pointed to an element.
import {
  addElement,
  applyEdit,
  changeElement,
  doMany,
  findDanglingReferences,
  removeElement,
  setFound,
  setWireFields,
  type ChassisDocument,
  type Edit
} from '#document/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const small = (): ChassisDocument =>
  chassis('Bench set')
    .unit('Main chassis')
    .tube('V1', '6CG7')
    .strip('TS1', 5)
    .part('jack', 'J1', ['A'])
    .part('plug', 'P1', ['A'], { mates: 'J1' })
    .support('K1', 'clamp', [90, 60])
    .cable('audio lead', 'shielded wire')
    .resistor('R4', '47k', 'V1-1', 'TS1-2')
    .wire(12, 'V1-5', 'TS1-2', { colour: 'red', awg: 22, route: ['K1'] })
    .wire(13, 'V1-4', null, { fromEnd: { as: 'V1 pin 4' }, cable: 'audio lead' })
    .build();

const after = (document: ChassisDocument, edit: Edit): ChassisDocument => {
  const result = applyEdit(document, edit);
  if (!result.ok) throw new Error(result.problem);
  return result.document;
};
const problemOf = (document: ChassisDocument, edit: unknown): string => {
  const result = applyEdit(document, edit as Edit);
  return result.ok ? 'no problem' : result.problem;
};

describe('a change', () => {
  it('merges fields key by key and takes a key away with null', () => {
    const document = after(
      small(),
      setWireFields('w12', { found: { awg: 20, colour: null }, function: 'B+' })
    );
    expect(document.wires['w12']?.found).toEqual({ awg: 20 });
    expect(document.wires['w12']?.function).toBe('B+');
    expect(document.wires['w12']?.from).toEqual(small().wires['w12']?.from);
  });

  it('shares everything that it did not touch', () => {
    const before = small();
    const document = after(before, setFound('w12', { awg: 20 }));
    expect(document.parts).toBe(before.parts);
    expect(document.wires['w13']).toBe(before.wires['w13']);
  });

  it('that changes nothing has no patches', () => {
    const result = applyEdit(small(), setFound('w12', { awg: 22 }));
    expect(result).toMatchObject({ ok: true, patches: [], inverse: [] });
  });

  it('is refused where the schema does not take the result, in words', () => {
    expect(problemOf(small(), setFound('w12', { awg: 99 }))).toBe(
      'wire "12" found.awg is 99; the most is 50: give at most 50'
    );
    expect(
      problemOf(small(), { kind: 'change-wire', args: { id: 'w12', fields: { state: 'lost' } } })
    ).toContain('write one of "found", "tagged", "removed", "fitted", "checked"');
  });

  it('is refused for an element that is missing, another id, and a dangerous key', () => {
    expect(problemOf(small(), setFound('w99', { awg: 20 }))).toContain('there is no wire w99');
    expect(problemOf(small(), setWireFields('w12', { id: 'w13' }))).toContain('cannot change');
    const poisoned = JSON.parse(
      '{"kind":"change-wire","args":{"id":"w12","fields":{"__proto__":{"state":"checked"}}}}'
    ) as Edit;
    expect(problemOf(small(), poisoned)).toContain('"__proto__"');
    expect(problemOf(small(), setFound('toString', { awg: 20 }))).toContain('there is no wire');
  });
});

describe('an edit from outside', () => {
  it.each([
    [null],
    [{}],
    [{ kind: 'change-wire' }],
    [{ kind: 'change-wire', args: {} }],
    [{ kind: 'change-wire', args: { id: 'w12' } }],
    [{ kind: 'add-wire', args: { element: {} } }],
    [{ kind: 'remove-wire', args: {} }],
    [{ kind: 'remove-wire', args: { id: 'w12', fields: { number: '13' } } }],
    [{ kind: 'do-many', args: { edits: [] } }],
    [{ kind: 'remove-policy', args: { id: 'w12' } }],
    [{ kind: 'paint-wire', args: { id: 'w12' } }],
    [{ kind: 'add-constructor', args: { element: { id: 'w1' } } }],
    [{ kind: 'do-many', args: { name: 'x', edits: 3 } }],
    [{ kind: 'do-many', args: { name: 'x', edits: [{ kind: 'x' }] } }],
    [{ kind: 'change-wire', args: { id: 'w12', fields: { found: { awg: NaN } } } }],
    [{ kind: 'change-wire', args: { id: 'w12', fields: { notes: new Date(0) } } }]
  ])('that makes no sense is refused: %j', (edit) => {
    expect(applyEdit(small(), edit as unknown as Edit).ok).toBe(false);
  });
});

describe('adding', () => {
  it('is refused where the id is taken, and where a field is missing', () => {
    const wire = small().wires['w12']!;
    expect(problemOf(small(), addElement('wire', wire))).toContain('there is a wire w12 already');
    expect(
      problemOf(small(), {
        kind: 'add-cable',
        args: { element: { id: 'c7', order: 'a1', name: 'x' } }
      })
    ).toBe('cable "x" kind is missing: add text in quotes');
  });
});

describe('removing', () => {
  it('a part leaves its wires with the words of the end, and keeps what was written before', () => {
    const document = after(small(), removeElement('part', 'pv1'));
    expect(document.wires['w12']?.from).toEqual({ known: 'seen', as: 'V1-5' });
    expect(document.wires['w13']?.from).toEqual({ known: 'seen', as: 'V1 pin 4' });
    expect(document.parts['pr4']?.terminals['ta']).toMatchObject({ notes: 'was on V1-1' });
    expect(document.parts['pr4']?.terminals['ta']).not.toHaveProperty('on');
    expect(findDanglingReferences(document)).toEqual([]);
  });

  it('a jack lets its plug go', () => {
    const document = after(small(), removeElement('part', 'pj1'));
    expect(document.parts['pp1']).not.toHaveProperty('mates');
  });

  it('a terminal does the same to what was on it, and to nothing else', () => {
    const document = after(small(), {
      kind: 'change-part',
      args: { id: 'pv1', fields: { terminals: { t5: null } } }
    });
    expect(document.wires['w12']?.from).toEqual({ known: 'seen', as: 'V1-5' });
    expect(document.wires['w13']?.from.at).toEqual({ part: 'pv1', terminal: 't4' });
    expect(document.parts['pr4']).toBe(document.parts['pr4']);
    expect(document.parts['pr4']?.terminals['ta']?.on).toEqual({ part: 'pv1', terminal: 't1' });
  });

  it('a cable or a support takes it out of the wires', () => {
    const document = after(
      small(),
      doMany('clear', [removeElement('cable', 'caudiolead'), removeElement('support', 'sk1')])
    );
    expect(document.wires['w13']).not.toHaveProperty('cable');
    expect(document.wires['w12']?.route).toEqual({ supports: [], by: 'hand' });
  });

  it('what a photo or a callout shows leaves it dangling, which is listed', () => {
    const picture = { hash: 'a'.repeat(64), type: 'image/jpeg', width: 30, height: 20 } as const;
    const unit = 'umainchassis';
    const shown = { order: 'a0', unit, picture, face: 'below' } as const;
    const spot = { part: 'pv1', terminal: 't5' };
    const document = after(
      small(),
      doMany('show', [
        addElement('photo', { ...shown, id: 'f1', name: 'V1', of: { part: 'pv1' } }),
        addElement('photo', { ...shown, id: 'f2', name: '', of: spot }),
        addElement('photo', { ...shown, id: 'f3', name: 'run', of: { wire: 'w12' } }),
        addElement('callout', {
          id: 'n1',
          order: 'a0',
          text: 'look',
          of: { kind: 'wire', id: 'w12' }
        })
      ])
    );
    expect(findDanglingReferences(document)).toEqual([]);
    const gone = after(
      document,
      doMany('clear', [removeElement('part', 'pv1'), removeElement('wire', 'w12')])
    );
    expect(findDanglingReferences(gone).map(({ words }) => words)).toEqual([
      'photo V1 is of a part that is not in the document',
      'a photo is of a part that is not in the document',
      'photo run is of a wire that is not in the document',
      'a callout points to a wire that is not in the document'
    ]);
  });

  it('a unit leaves its parts dangling, which is listed', () => {
    const document = after(small(), removeElement('unit', 'umainchassis'));
    expect(findDanglingReferences(document).map(({ words }) => words)).toContain(
      'V1 is in a unit that is not in the document'
    );
  });
});

describe('many at once', () => {
  it('see each other', () => {
    const wire = small().wires['w12']!;
    const document = after(
      small(),
      doMany('swap', [
        addElement('wire', { ...wire, id: 'w77', number: '77' }),
        setFound('w77', { awg: 18 }),
        removeElement('part', 'pv1')
      ])
    );
    expect(document.wires['w77']).toMatchObject({ found: { awg: 18 }, from: { as: 'V1-5' } });
  });

  it('are all refused where one is', () => {
    const before = small();
    expect(
      problemOf(before, doMany('two', [setFound('w12', { awg: 20 }), setFound('w99', { awg: 20 })]))
    ).toContain('w99');
    expect(before).toEqual(small());
  });
});

describe('the name of a step', () => {
  const nameOf = (edit: Edit) => {
    const result = applyEdit(small(), edit);
    return result.ok ? result.name : result.problem;
  };
  it.each<[string, Edit]>([
    ['change wire 12 colour', setFound('w12', { colour: 'blue' })],
    ['change wire 12 planned gauge', setWireFields('w12', { planned: { awg: 20 } })],
    [
      'change wire 12 dc volts and pulse volts',
      setWireFields('w12', { carries: { dcV: 3, pulseV: 4 } })
    ],
    ['change wire 12 3 fields', setFound('w12', { awg: 20, colour: 'blue', tracer: 'white' })],
    ['change wire 12 first end', setWireFields('w12', { from: { known: 'metered' } })],
    ['change wire 12 taped length', setWireFields('w12', { tapedMm: 120 })],
    ['move part V1', changeElement('part', 'pv1', { place: { x: 1, y: 2, by: 'hand' } })],
    ['remove part V1', removeElement('part', 'pv1')],
    ["change the set's title", { kind: 'change-identity', args: { fields: { title: 'x' } } }],
    [
      "change the rules' margin required",
      { kind: 'change-policy', args: { fields: { marginRequired: 2 } } }
    ],
    ['tidy', doMany('tidy', [removeElement('part', 'pv1')])]
  ])('is "%s"', (name, edit) => {
    expect(nameOf(edit)).toBe(name);
  });
});
