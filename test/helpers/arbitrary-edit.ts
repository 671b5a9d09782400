// Any edit that suits a document: made as a plan, which becomes an edit when it meets the document, so
// that a sequence of them can follow each other.
import {
  collections,
  doMany,
  type ChassisDocument,
  type Edit,
  type ElementName,
  type Fields
} from '#document/index.ts';
import fc from 'fast-check';
import { arbitraryDocument, arbitraryNumber } from './arbitrary-document.ts';

/** Undefined where the document has nothing that the plan could change. */
export type EditPlan = (document: ChassisDocument) => Edit | undefined;

const kinds = Object.keys(collections) as ElementName[];
const recordOf = (document: ChassisDocument, kind: ElementName) =>
  document[collections[kind]] as Record<string, { id: string } & Fields>;

const idAt = (document: ChassisDocument, kind: ElementName, index: number): string | undefined => {
  const ids = Object.keys(recordOf(document, kind));
  return ids[index % ids.length];
};

const word = fc.string({ maxLength: 6 });
const order = fc.constantFrom('a0', 'a5', 'Zz');
const place = fc.record({
  x: arbitraryNumber(-99, 99),
  y: arbitraryNumber(-99, 99),
  by: fc.constant('hand')
});
const orGone = <T>(value: fc.Arbitrary<T>) => fc.option(value, { freq: 3 });

/** Fields that each kind takes; null takes a field away that may be away. */
const fieldsOf: Readonly<Record<ElementName, fc.Arbitrary<Fields>>> = {
  unit: fc.record({ name: word, notes: orGone(word), order }, { requiredKeys: [] }),
  part: fc.record(
    { reference: word, value: orGone(word), place: orGone(place), elements: fc.constant(null) },
    { requiredKeys: [] }
  ),
  wire: fc.record(
    {
      number: word,
      state: fc.constantFrom('found', 'tagged'),
      found: fc.record(
        { awg: orGone(fc.integer({ min: 0, max: 30 })), colour: orGone(word) },
        { requiredKeys: [] }
      ),
      from: fc.record({ at: fc.constant(null), as: orGone(word) }, { requiredKeys: [] }),
      route: orGone(
        fc.record({
          supports: fc.constantFrom([], ['sx1'], ['sx1', 'sx2']),
          by: fc.constant('hand')
        })
      ),
      extra: orGone(fc.record({ length: word, '1': word }, { requiredKeys: [] })),
      unheardOf: orGone(
        fc.oneof(word, fc.record({ a: orGone(word), length: fc.nat(3) }, { requiredKeys: [] }))
      )
    },
    { requiredKeys: [] }
  ),
  cable: fc.record({ name: word, jacket: orGone(word) }, { requiredKeys: [] }),
  support: fc.record({ name: word, heightMm: orGone(arbitraryNumber(0, 9)) }, { requiredKeys: [] }),
  photo: fc.record(
    { name: word, opacity: orGone(arbitraryNumber(0, 1)), of: fc.constant(null) },
    { requiredKeys: [] }
  ),
  pattern: fc.record({ name: word, value: orGone(word) }, { requiredKeys: [] }),
  callout: fc.record({ text: word, place: orGone(place) }, { requiredKeys: [] }),
  stock: fc.record({ name: word, lengthMm: arbitraryNumber(0, 9000) }, { requiredKeys: [] })
};

const kind = fc.constantFrom(...kinds);

const changePlan: fc.Arbitrary<EditPlan> = kind.chain((of) =>
  fc.tuple(fc.nat(99), fieldsOf[of]).map(([index, fields]) => (document) => {
    const id = idAt(document, of, index);
    return id === undefined ? undefined : { kind: `change-${of}`, args: { id, fields } };
  })
);

const removePlan: fc.Arbitrary<EditPlan> = fc
  .tuple(kind, fc.nat(99))
  .map(([of, index]) => (document) => {
    const id = idAt(document, of, index);
    return id === undefined ? undefined : { kind: `remove-${of}`, args: { id } };
  });

/** Elements are taken from another document. */
const addPlan: fc.Arbitrary<EditPlan> = fc
  .tuple(arbitraryDocument(2), kind, fc.nat(99))
  .map(([source, of, index]) => (document) => {
    const id = idAt(source, of, index);
    const element = id === undefined ? undefined : recordOf(source, of)[id];
    if (!element || Object.hasOwn(recordOf(document, of), element.id)) return undefined;
    return { kind: `add-${of}`, args: { element } };
  });

const terminalPlan: fc.Arbitrary<EditPlan> = fc
  .tuple(fc.nat(99), fc.nat(9))
  .map(([index, which]) => (document) => {
    const id = idAt(document, 'part', index);
    const part = id === undefined ? undefined : document.parts[id];
    const terminals = Object.keys(part?.terminals ?? {});
    const terminal = terminals[which % terminals.length];
    if (!part || terminal === undefined) return undefined;
    return {
      kind: 'change-part',
      args: { id: part.id, fields: { terminals: { [terminal]: null } } }
    };
  });

const sectionPlan: fc.Arbitrary<EditPlan> = fc.oneof(
  fc
    .record({ title: word, notes: orGone(word) }, { requiredKeys: [] })
    .map((fields): EditPlan => () => ({ kind: 'change-identity', args: { fields } })),
  fc
    .record(
      {
        marginRequired: orGone(arbitraryNumber(1, 2)),
        ladderV: orGone(fc.constantFrom([300], [300, 600]))
      },
      { requiredKeys: [] }
    )
    .map((fields): EditPlan => () => ({ kind: 'change-policy', args: { fields } })),
  fc
    .record(
      {
        readings: fc.dictionary(
          fc.constantFrom('continuity a b', 'power-up c'),
          orGone(fc.record({ typed: word, on: fc.constant('2026-11-26') })),
          { maxKeys: 2 }
        ),
        records: orGone(fc.constantFrom({}, { 'power-up': { 'line volts': '117 V' } }))
      },
      { requiredKeys: [] }
    )
    .map((fields): EditPlan => () => ({ kind: 'change-proof', args: { fields } }))
);

const onePlan = fc.oneof(
  { weight: 4, arbitrary: changePlan },
  { weight: 2, arbitrary: removePlan },
  { weight: 1, arbitrary: addPlan },
  { weight: 1, arbitrary: terminalPlan },
  { weight: 1, arbitrary: sectionPlan }
);

/** Plans of several edits at once suit as long as they do not get in each other's way. */
const manyPlan: fc.Arbitrary<EditPlan> = fc
  .tuple(
    word,
    fc.array(fc.oneof(changePlan, sectionPlan), { minLength: 1, maxLength: 4 }),
    removePlan
  )
  .map(([name, plans, last]) => (document) => {
    const edits = [...plans, last].flatMap((plan) => plan(document) ?? []);
    return edits.length === 0 ? undefined : doMany(`many ${name}`, edits);
  });

/** Any edit, of every kind there is. */
export const arbitraryEditPlan: fc.Arbitrary<EditPlan> = fc.oneof(
  { weight: 6, arbitrary: onePlan },
  { weight: 1, arbitrary: manyPlan }
);

const retyped: readonly (readonly [ElementName, fc.Arbitrary<Fields>])[] = [
  ['part', fc.record({ place })],
  ['wire', fc.record({ found: fc.record({ awg: orGone(fc.nat(30)), colour: orGone(word) }) })],
  [
    'wire',
    fc.record({
      route: fc.record({
        supports: fc.constantFrom([], ['sx1'], ['sx1', 'sx2'], ['sx2', 'sx1', 'sx3']),
        by: fc.constantFrom('hand', 'layout')
      })
    })
  ],
  ['wire', fc.record({ extra: fc.record({ length: orGone(word), '1': word }) })],
  [
    'wire',
    fc.record({ unheardOf: fc.record({ a: orGone(word), deep: fc.record({ b: orGone(word) }) }) })
  ]
];

/** Several edits of the same fields of one element, or of two at once, as a drag or retyping makes them. */
export const arbitraryRetyping: fc.Arbitrary<EditPlan[]> = fc
  .tuple(fc.constantFrom(...retyped), fc.nat(99), fc.nat(99), fc.boolean())
  .chain(([[of, fields], first, second, isPair]) =>
    fc.array(fc.tuple(fields, fields), { minLength: 2, maxLength: 6 }).map((values) =>
      values.map(([one, other]): EditPlan => (document) => {
        const ids = [idAt(document, of, first), idAt(document, of, second)];
        const edits = [one, other].flatMap((value, index): Edit[] => {
          const id = ids[index];
          return id === undefined ? [] : [{ kind: `change-${of}`, args: { id, fields: value } }];
        });
        return isPair && edits.length > 0 ? doMany('both', edits) : edits[0];
      })
    )
  );
