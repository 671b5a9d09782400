// Edits of the kinds that a study has to follow: ends that move, volts, gauges, lengths, switches, metal,
// elements that come and go. Made as plans, which become edits when they meet a document.
import {
  collections,
  doMany,
  type ChassisDocument,
  type Edit,
  type ElementName,
  type Fields,
  type TerminalRef
} from '#document/index.ts';
import fc from 'fast-check';
import { arbitraryEditPlan, type EditPlan } from './arbitrary-edit.ts';

const idAt = (document: ChassisDocument, kind: ElementName, index: number): string | undefined => {
  const ids = Object.keys(document[collections[kind]]);
  return ids[index % ids.length];
};

const terminalAt = (document: ChassisDocument, index: number): TerminalRef | undefined => {
  const all = Object.values(document.parts).flatMap(({ id, terminals }) =>
    Object.keys(terminals).map((terminal) => ({ part: id, terminal }))
  );
  return all[index % all.length];
};

const change =
  (kind: ElementName, index: number, fieldsOf: (document: ChassisDocument) => Fields): EditPlan =>
  (document) => {
    const id = idAt(document, kind, index);
    return id === undefined
      ? undefined
      : { kind: `change-${kind}`, args: { id, fields: fieldsOf(document) } };
  };

const orGone = <T>(value: fc.Arbitrary<T>) => fc.option(value, { freq: 4 });

const wireFields: fc.Arbitrary<Fields> = fc.oneof(
  fc.record({
    carries: fc.record(
      {
        dcV: orGone(fc.constantFrom(0, 5, -45, 250, 285, 18_000)),
        acV: orGone(fc.constantFrom(0, 6.3, 117)),
        pulseV: orGone(fc.constantFrom(0, 900, 3400)),
        amps: orGone(fc.constantFrom(0.01, 0.6, 4))
      },
      { requiredKeys: [] }
    )
  }),
  fc.record({
    found: fc.record(
      {
        awg: orGone(fc.constantFrom(14, 18, 20, 22, 24)),
        ratingV: orGone(fc.constantFrom(300, 600, 20_000)),
        colour: orGone(fc.constantFrom('red', 'black')),
        condition: orGone(fc.constantFrom('brittle', 'sound'))
      },
      { requiredKeys: [] }
    )
  }),
  fc.record({ tapedMm: orGone(fc.constantFrom(0, 50, 240, 900)) }),
  fc.record({
    function: orGone(fc.constantFrom('B+ 285 V', 'heaters', 'ac line', 'audio from volume control'))
  }),
  fc.record({
    planned: fc.record(
      {
        way: orGone(fc.constantFrom('new wire', 'keep')),
        awg: orGone(fc.constantFrom(18, 22)),
        style: orGone(fc.constant('UL 1015'))
      },
      { requiredKeys: [] }
    ),
    state: fc.constantFrom('found', 'removed', 'fitted')
  }),
  fc.record({ isPart: orGone(fc.constantFrom('resistance cord', 'filament loop')) }),
  fc.record({ number: fc.constantFrom('1', '7', '12a', '') }),
  fc.record({ order: fc.constantFrom('a0', 'a5', 'Zz') })
);

const wireChange = fc
  .tuple(fc.nat(9999), wireFields)
  .map(([index, fields]) => change('wire', index, () => fields));

const endMove = fc
  .tuple(fc.nat(9999), fc.constantFrom('from', 'to'), orGone(fc.nat(9999)))
  .map(([index, end, at]) =>
    change('wire', index, (document) => {
      const ref = at === null ? undefined : terminalAt(document, at);
      return { [end]: ref ? { at: ref, known: 'seen' } : { at: null, known: 'unknown' } };
    })
  );

const routeChange = fc
  .tuple(fc.nat(9999), fc.array(fc.nat(9), { maxLength: 3 }))
  .map(([index, stops]) =>
    change('wire', index, (document) => {
      const supports = stops.flatMap((stop) => idAt(document, 'support', stop) ?? []);
      return { route: supports.length === 0 ? null : { supports, by: 'hand' } };
    })
  );

const newWire = fc
  .tuple(fc.nat(99_999), fc.nat(9999), fc.nat(9999), fc.constantFrom('a1', 'b9', 'Zz'))
  .map(([number, from, to, order]): EditPlan => (document) => {
    const [a, b] = [terminalAt(document, from), terminalAt(document, to)];
    const id = `wnew${number}`;
    if (!a || !b || id in document.wires) return undefined;
    const end = (at: TerminalRef) => ({ at, known: 'seen' });
    return {
      kind: 'add-wire',
      args: {
        element: {
          id,
          order,
          number: String(number),
          from: end(a),
          to: end(b),
          construction: 'hook-up wire',
          carries: {},
          found: { awg: 22 },
          planned: {},
          state: 'found'
        }
      }
    };
  });

/** What may be changed on an element of a part: a switch thrown, a value put right. */
const elementChange = fc
  .tuple(fc.nat(9999), fc.nat(9), fc.constantFrom(0.5, 2, 0))
  .map(([index, which, factor]): EditPlan => (document) => {
    const parts = Object.values(document.parts).filter(
      ({ elements }) => Object.keys(elements ?? {}).length > 0
    );
    const part = parts[index % parts.length];
    const all = Object.values(part?.elements ?? {});
    const element = all[which % all.length] as (Fields & { id: string }) | undefined;
    if (!part || !element) return undefined;
    const fields: Record<string, unknown> = {};
    for (const [name, value] of Object.entries(element)) {
      if (typeof value === 'number') fields[name] = value * factor;
      if (name === 'closed') fields[name] = !(value as boolean);
    }
    return {
      kind: 'change-part',
      args: { id: part.id, fields: { elements: { [element.id]: fields } } }
    };
  });

const partChange = fc
  .tuple(
    fc.nat(9999),
    fc.record(
      {
        place: orGone(fc.record({ x: fc.nat(200), y: fc.nat(200), by: fc.constant('hand') })),
        value: orGone(fc.constantFrom('47k', '0.1 uF', '500k')),
        type: orGone(fc.constantFrom('6CG7', '5U4GB', '12BE6')),
        reference: fc.constantFrom('V1', 'R7', 'TS2'),
        order: fc.constantFrom('a0', 'a5', 'Zz')
      },
      { requiredKeys: [] }
    )
  )
  .map(([index, fields]) => change('part', index, () => fields));

const unitChange = fc
  .tuple(fc.nat(9), fc.constantFrom('bonded', 'apart', 'none'))
  .map(([index, metal]) => change('unit', index, () => ({ metal })));

const policyChange = fc
  .record(
    {
      ambientC: orGone(fc.constantFrom(20, 50)),
      highLine: orGone(fc.constantFrom(0, 0.1)),
      marginRequired: orGone(fc.constantFrom(1, 2))
    },
    { requiredKeys: [] }
  )
  .map((fields): EditPlan => () => ({ kind: 'change-policy', args: { fields } }));

const one: fc.Arbitrary<EditPlan> = fc.oneof(
  { weight: 6, arbitrary: wireChange },
  { weight: 3, arbitrary: endMove },
  { weight: 2, arbitrary: routeChange },
  { weight: 2, arbitrary: newWire },
  { weight: 2, arbitrary: elementChange },
  { weight: 2, arbitrary: partChange },
  { weight: 1, arbitrary: unitChange },
  { weight: 1, arbitrary: policyChange },
  { weight: 3, arbitrary: arbitraryEditPlan }
);

const several: fc.Arbitrary<EditPlan> = fc
  .array(fc.oneof(wireChange, endMove, partChange), { minLength: 2, maxLength: 4 })
  .map((plans) => (document) => {
    const edits = plans.flatMap((plan): Edit[] => {
      const edit = plan(document);
      return edit ? [edit] : [];
    });
    return edits.length === 0 ? undefined : doMany('several', edits);
  });

/** Any edit, those that the study follows more often than others. */
export const arbitraryStudyEdit: fc.Arbitrary<EditPlan> = fc.oneof(
  { weight: 8, arbitrary: one },
  { weight: 1, arbitrary: several }
);
