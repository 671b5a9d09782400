// Any document that the schema takes, for property tests: with ends not found, references that dangle,
// kinds and keys that this version does not know, and text in every script. Deterministic for a seed.
import type { elementSchemas } from '#document/index.ts';
import {
  documentFormat,
  documentVersion,
  idAlphabet,
  idLetters,
  knowledgeSchema,
  orderBetween,
  partKinds,
  wireStates,
  type AnyElement,
  type Cable,
  type Callout,
  type ChassisDocument,
  type Id,
  type IdKind,
  type Part,
  type Pattern,
  type Photo,
  type PhotoScale,
  type Policy,
  type Stock,
  type Support,
  type Terminal,
  type TerminalRef,
  type Unit,
  type Wire,
  type WireEnd
} from '#document/index.ts';
import { isDangerousKey } from '#document/plain-json.ts';
import fc from 'fast-check';

const idOf = (kind: IdKind): fc.Arbitrary<Id> =>
  fc
    .array(fc.constantFrom(...idAlphabet), { minLength: 9, maxLength: 9 })
    .map((characters) => idLetters[kind] + characters.join(''));

/** A number as JSON brings it back: never -0. */
export const arbitraryNumber = (min: number, max: number): fc.Arbitrary<number> =>
  fc
    .oneof(
      fc.integer({ min: Math.ceil(min), max: Math.floor(max) }),
      fc.double({ min, max, noNaN: true })
    )
    .map((value) => value + 0);

const word = fc.oneof(
  fc.constantFrom('red', 'V7', '47 k', 'B+ 285 V', '', 'Q & A <x>', '5'),
  fc.string({ unit: 'binary', maxLength: 12 })
);
const order = fc.oneof(
  fc.constantFrom('a0', 'a1', 'a1V', 'Zz'),
  fc.nat(60).map((count) => {
    let key = orderBetween(null, null);
    for (let turn = 0; turn < count; turn++) key = orderBetween(key, null);
    return key;
  })
);
const mm = arbitraryNumber(-500, 500);
const point = fc.record({ x: mm, y: mm }, { noNullPrototype: true });
const by = fc.constantFrom('hand' as const, 'layout' as const);

/** Keys that no version has known yet, with any JSON in them. */
const unknownKeys: fc.Arbitrary<Record<string, unknown>> = fc.oneof(
  { weight: 4, arbitrary: fc.constant({}) },
  {
    weight: 1,
    arbitrary: fc.dictionary(
      fc.oneof(
        fc.constantFrom('length', '0', 'toString', 'zz top'),
        fc.string({ maxLength: 6 }).map((key) => `x ${key}`)
      ),
      fc.jsonValue({ maxDepth: 2 }).filter((value) => isPlain(value)),
      { maxKeys: 2, noNullPrototype: true }
    )
  }
);
const isPlain = (value: unknown): boolean => {
  if (Object.is(value, -0)) return false;
  if (typeof value !== 'object' || value === null) return true;
  return Object.entries(value).every(([key, inner]) => !isDangerousKey(key) && isPlain(inner));
};

type Model<T> = { [K in keyof T]-?: fc.Arbitrary<T[K]> };

/** A record with the named fields always there, any of the others, and unknown keys. */
const loose = <T extends object>(
  required: Partial<Model<T>>,
  optional: Partial<Model<T>> = {}
): fc.Arbitrary<T> =>
  fc
    .tuple(
      fc.record({ ...required, ...optional } as Model<T>, {
        requiredKeys: Object.keys(required) as never[],
        noNullPrototype: true
      }),
      unknownKeys
    )
    .map(([known, unknown]) => ({ ...unknown, ...known }) as T);

const recordOf = <T extends { id: string }>(
  element: fc.Arbitrary<T>,
  maxLength: number,
  minLength = 0
): fc.Arbitrary<Record<Id, T>> =>
  fc
    .uniqueArray(element, { maxLength, minLength, selector: ({ id }) => id })
    .map((elements) => Object.fromEntries(elements.map((item) => [item.id, item])));

const terminal = loose<Terminal>(
  { id: idOf('terminal'), order, name: word },
  {
    offset: point,
    heightMm: mm,
    ending: word,
    grounded: fc.boolean(),
    leadsCounted: fc.nat(9),
    notes: word
  }
);

const elementFields = {
  source: { current: fc.constantFrom('dc', 'ac'), volts: arbitraryNumber(-1000, 1000) },
  rectifier: {},
  load: { amps: arbitraryNumber(0, 5) },
  resistor: { ohms: arbitraryNumber(0, 1e6) },
  heater: { volts: arbitraryNumber(0, 30), amps: arbitraryNumber(0, 3) },
  capacitor: { farads: arbitraryNumber(0, 1) },
  pulse: { peakV: arbitraryNumber(0, 30_000) },
  link: { what: fc.constantFrom('joined', 'fuse', 'switch'), closed: fc.boolean() },
  'of a later version': {}
} as const satisfies Record<keyof typeof elementSchemas | 'of a later version', object>;

const elementBetween = (terminals: readonly Id[]): fc.Arbitrary<AnyElement> =>
  fc.constantFrom(...(Object.keys(elementFields) as (keyof typeof elementFields)[])).chain((kind) =>
    loose<AnyElement>(
      {
        id: idOf('element'),
        order,
        from: fc.constantFrom(...terminals),
        kind: fc.constant(kind),
        ...elementFields[kind]
      } as never,
      { to: fc.constantFrom(...terminals) }
    )
  );

const partIn = (units: readonly Id[]): fc.Arbitrary<Part> =>
  recordOf(terminal, 4, 1).chain((terminals) =>
    loose<Part>(
      {
        id: idOf('part'),
        order,
        unit: fc.constantFrom(...units),
        kind: fc.oneof(fc.constantFrom(...partKinds), fc.constant('of a later version')),
        reference: word,
        terminals: fc.constant(terminals)
      },
      {
        type: word,
        value: word,
        function: word,
        place: loose<NonNullable<Part['place']>>(
          { x: mm, y: mm },
          { rotation: fc.constantFrom(0, 90, -45), face: fc.constantFrom('below', 'above'), by }
        ),
        diagramPlace: fc.record({ x: mm, y: mm, by }),
        elements: recordOf(elementBetween(Object.keys(terminals)), 2),
        notes: word
      }
    )
  );

const conductor = {
  awg: fc.integer({ min: -3, max: 40 }),
  stranding: fc.constantFrom('solid' as const, 'stranded' as const),
  colour: word,
  tracer: word,
  style: fc.constantFrom('UL 1015', 'UL 1007'),
  ratingV: fc.constantFrom(300, 600, 1000, 20_000),
  ratingKind: fc.constantFrom('any' as const, 'dc' as const, 'pulse' as const)
};

const wireBetween = (
  refs: readonly TerminalRef[],
  cables: readonly Id[],
  supports: readonly Id[]
): fc.Arbitrary<Wire> => {
  const end = loose<WireEnd>(
    { known: fc.constantFrom(...knowledgeSchema.options) },
    { at: fc.constantFrom(...refs), as: word, termination: word, stripMm: arbitraryNumber(0, 30) }
  );
  return loose<Wire>(
    {
      id: idOf('wire'),
      order,
      number: fc.oneof(fc.nat(99).map(String), word),
      from: end,
      to: end,
      construction: fc.constantFrom('hook-up wire', 'coax', 'shield', 'of a later version'),
      carries: loose<Wire['carries']>(
        {},
        {
          dcV: arbitraryNumber(-500, 30_000),
          acV: arbitraryNumber(0, 1000),
          pulseV: arbitraryNumber(0, 30_000),
          amps: arbitraryNumber(0, 10)
        }
      ),
      found: loose<Wire['found']>({}, { ...conductor, condition: word }),
      planned: loose<Wire['planned']>(
        {},
        { ...conductor, way: fc.constantFrom('new wire', 're-sleeve', 'splice in', 'keep') }
      ),
      state: fc.constantFrom(...wireStates)
    },
    {
      function: word,
      cable: fc.constantFrom(...cables),
      origin: fc.constantFrom('original', 'earlier repair', 'modification'),
      route: loose<NonNullable<Wire['route']>>({
        supports: fc.array(fc.constantFrom(...supports), { maxLength: 4 }),
        by
      }),
      tapedMm: arbitraryNumber(0, 2000),
      outsideMm: arbitraryNumber(0, 2000),
      notes: word,
      extra: fc.dictionary(fc.constantFrom('length', '1', 'Bin', 'checked by'), word, {
        maxKeys: 2,
        noNullPrototype: true
      })
    }
  );
};

const unit = loose<Unit>(
  { id: idOf('unit'), order, name: word, metal: fc.constantFrom('bonded', 'apart', 'none') },
  { place: point, notes: word }
);
const cable = loose<Cable>(
  {
    id: idOf('cable'),
    order,
    name: word,
    kind: fc.constantFrom('coax', 'shielded pair', 'of a later version')
  },
  { impedanceOhm: fc.constantFrom(75, 300), velocity: arbitraryNumber(0, 1) }
);
const supportIn = (units: readonly Id[]): fc.Arbitrary<Support> =>
  loose<Support>(
    {
      id: idOf('support'),
      order,
      unit: fc.constantFrom(...units),
      name: word,
      kind: fc.constantFrom('clamp', 'tie', 'grommet', 'hole', 'corner'),
      place: point
    },
    { boreMm: arbitraryNumber(0, 40) }
  );

const picture: fc.Arbitrary<Photo['picture']> = fc.record({
  hash: fc.constantFrom('0123456789abcdef'.repeat(4), 'f'.repeat(64)),
  type: fc.constantFrom('image/jpeg', 'image/png'),
  width: fc.integer({ min: 1, max: 4000 }),
  height: fc.integer({ min: 1, max: 4000 })
});
const photoScale: fc.Arbitrary<PhotoScale> = fc.oneof(
  loose<Extract<PhotoScale, { by: 'two points' }>>({
    by: fc.constant('two points'),
    a: point,
    b: point,
    mm: arbitraryNumber(0, 400)
  }),
  loose<Extract<PhotoScale, { by: 'rectangle' }>>({
    by: fc.constant('rectangle'),
    corners: fc.tuple(point, point, point, point),
    widthMm: arbitraryNumber(1, 400),
    heightMm: arbitraryNumber(1, 400)
  })
);
const photoIn = (units: readonly Id[], refs: readonly TerminalRef[]): fc.Arbitrary<Photo> =>
  loose<Photo>(
    {
      id: idOf('photo'),
      order,
      unit: fc.constantFrom(...units),
      name: word,
      picture,
      face: fc.constantFrom('below', 'above')
    },
    {
      of: fc.oneof(
        fc.constantFrom(...refs),
        fc.constantFrom(...refs).map(({ part }) => ({ part })),
        fc.constant({ wire: 'wgone' })
      ),
      scale: photoScale,
      place: point,
      opacity: arbitraryNumber(0, 1),
      locked: fc.boolean(),
      notes: word
    }
  );
const pattern = loose<Pattern>(
  {
    id: idOf('pattern'),
    order,
    name: word,
    kind: fc.constantFrom('tube', 'of a later version'),
    terminals: recordOf(terminal, 3)
  },
  { type: word, value: word }
);
const calloutIn = (units: readonly Id[], refs: readonly TerminalRef[]): fc.Arbitrary<Callout> =>
  loose<Callout>(
    { id: idOf('callout'), order, text: word },
    {
      of: fc.constantFrom(...refs).map(({ part }) => ({ kind: 'part' as const, id: part })),
      unit: fc.constantFrom(...units),
      tip: point,
      place: point
    }
  );
const stock = loose<Stock>(
  {
    id: idOf('stock'),
    order,
    name: word,
    kind: fc.constantFrom('spool', 'offcut', 'salvage'),
    lengthMm: arbitraryNumber(0, 100_000)
  },
  { ...conductor, pricePerMetre: arbitraryNumber(0, 9), where: word }
);

const policy: fc.Arbitrary<Partial<Policy>> = loose<Partial<Policy>>(
  {},
  {
    marginRequired: arbitraryNumber(1, 3),
    highLine: arbitraryNumber(0, 0.2),
    ladderV: fc.constant([300, 600, 2000])
  }
);

/** Documents of up to `size` parts and twice as many wires. */
export const arbitraryDocument = (size = 6): fc.Arbitrary<ChassisDocument> =>
  fc
    .tuple(recordOf(unit, 3), recordOf(cable, 2), idOf('unit'), idOf('cable'), idOf('support'))
    .chain(([units, cables, goneUnit, goneCable, goneSupport]) => {
      const unitIds = [...Object.keys(units), goneUnit];
      return fc
        .tuple(recordOf(partIn(unitIds), size), recordOf(supportIn(unitIds), 3))
        .chain(([bare, supports]) => {
          const refs = Object.values(bare).flatMap((part) =>
            Object.keys(part.terminals).map((id) => ({ part: part.id, terminal: id }))
          );
          refs.push({ part: 'pgone', terminal: 'tgone' });
          const wire = wireBetween(
            refs,
            [...Object.keys(cables), goneCable],
            [...Object.keys(supports), goneSupport]
          );
          return loose<ChassisDocument>({
            format: fc.constant(documentFormat),
            version: fc.constant(documentVersion),
            id: idOf('document'),
            lineage: fc.array(fc.constantFrom('0123456789abcdef', 'f'.repeat(32)), {
              maxLength: 2
            }),
            identity: loose<ChassisDocument['identity']>(
              { title: word },
              { set: word, notes: word }
            ),
            policy,
            units: fc.constant(units),
            parts: withLeadsOn(bare, refs),
            wires: recordOf(wire, 2 * size),
            cables: fc.constant(cables),
            supports: fc.constant(supports),
            photos: recordOf(photoIn(unitIds, refs), 2),
            patterns: recordOf(pattern, 2),
            callouts: recordOf(calloutIn(unitIds, refs), 2),
            shelf: recordOf(stock, 2)
          });
        });
    });

/** Some parts with a terminal on another part's, or mated with another part. */
const withLeadsOn = (
  parts: Readonly<Record<Id, Part>>,
  refs: readonly TerminalRef[]
): fc.Arbitrary<Record<Id, Part>> => {
  const list = Object.values(parts);
  const choice = fc.record({
    on: fc.option(fc.constantFrom(...refs), { nil: undefined }),
    mates: fc.option(fc.constantFrom('pgone', ...list.map(({ id }) => id)), { nil: undefined })
  });
  return fc.array(choice, { minLength: list.length, maxLength: list.length }).map((choices) =>
    Object.fromEntries(
      list.map((part, index) => {
        const { on, mates } = choices[index] ?? {};
        const first = Object.values(part.terminals)[0];
        const terminals =
          on && first ? { ...part.terminals, [first.id]: { ...first, on } } : part.terminals;
        return [part.id, { ...part, terminals, ...(mates === undefined ? {} : { mates }) }];
      })
    )
  );
};
