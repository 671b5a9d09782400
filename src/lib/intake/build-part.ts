// From a part's draft to a part of the document: all its terminals in natural order, a tube's pins
// where its base has them, its heater as the handbook gives it.
import { ordersBetween, type MakeId, type Part, type Terminal } from '#document/index.ts';
import {
  findCapName,
  findTubeBase,
  findTubeType,
  heaterElements,
  parseColour,
  pinPlaces,
  tubeBaseOf,
  type TubeBase,
  type TubeType
} from '#handbook/index.ts';
import { hasOnePoint, type PartDraft } from './part-drafts.ts';

export interface BuiltPart {
  readonly part: Part;
  /** Ids of named terminals, by name in small letters. */
  readonly idOf: ReadonlyMap<string, string>;
  /** Ids of the terminals that nobody named, in the order of the wires. */
  readonly bareIds: readonly string[];
}

interface TerminalPlan {
  readonly name: string;
  readonly isGrounded: boolean;
  readonly offset?: { readonly x: number; readonly y: number };
}

const natural = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** The base of a draft's tube, from its type or written in its place. */
export const findDraftBase = (
  draft: PartDraft
): { readonly type: TubeType | null; readonly base: TubeBase } | null => {
  if (draft.type === null || !/tube$/.test(draft.kind)) return null;
  const type = findTubeType(draft.type);
  if (type) return { type, base: tubeBaseOf(type.base) };
  const base = findTubeBase(draft.type);
  return base ? { type: null, base } : null;
};

const countedKinds: ReadonlySet<string> = new Set([
  'tube',
  'picture tube',
  'terminal strip',
  'plug',
  'jack'
]);

/** A strip that has a lug 3 has lugs 1 and 2, whether a wire ends there or not. */
const numbersBelow = (draft: PartDraft): string[] => {
  if (!countedKinds.has(draft.kind)) return [];
  const numbers = [...draft.terminals.keys()].filter((name) => /^\d{1,2}$/.test(name)).map(Number);
  const most = Math.max(0, ...numbers);
  return most > 30 ? [] : Array.from({ length: most }, (_, index) => String(index + 1));
};

const capNames = ['cap', 'anode', 'second anode', '2nd anode', 'hv'];

const planTerminals = (draft: PartDraft): { plans: TerminalPlan[]; bareNames: string[] } => {
  const plans = new Map<string, TerminalPlan>();
  const known = findDraftBase(draft);
  if (known) {
    for (const { pin, x, y } of pinPlaces(known.base)) {
      plans.set(pin, { name: pin, isGrounded: false, offset: { x, y } });
    }
    const cap = known.type ? findCapName(known.type) : null;
    if (cap !== null) {
      // People name a picture tube's in several ways: the list's own name is kept.
      const written = capNames.find((name) => draft.terminals.has(name)) ?? cap;
      plans.set(written, { name: written, isGrounded: false, offset: { x: 0, y: 0 } });
    }
  }
  // A base that is known has its own pins: a number beyond them brings none between.
  for (const name of known ? [] : numbersBelow(draft)) {
    if (!plans.has(name)) plans.set(name, { name, isGrounded: false });
  }
  for (const [key, { name, isGrounded }] of draft.terminals) {
    plans.set(key, { name, ...plans.get(key), isGrounded });
  }
  const bareNames: string[] = [];
  // A part with a single lead is known by its reference alone.
  const isSingle = plans.size === 0 && draft.bare === 1;
  for (let next = 1; bareNames.length < draft.bare; next += 1) {
    const name = isSingle ? '' : `?${next}`;
    if (plans.has(name)) continue;
    plans.set(name, { name, isGrounded: false });
    bareNames.push(name);
  }
  const sorted = [...plans.values()].sort(
    (a, b) =>
      Number(a.name.startsWith('?')) - Number(b.name.startsWith('?')) ||
      Number(capNames.includes(a.name)) - Number(capNames.includes(b.name)) ||
      natural.compare(a.name, b.name)
  );
  return { plans: sorted, bareNames };
};

// A resistor with a third lug or an arm is a control.
const kindOf = ({ kind, terminals }: PartDraft): PartDraft['kind'] =>
  kind === 'resistor' && ['3', 'wiper', 'arm', 'slider'].some((name) => terminals.has(name))
    ? 'control'
    : kind;

/** How a terminal is made, where that is certain; undefined where it is not. */
const endingOf = (draft: PartDraft, { name, isGrounded }: TerminalPlan): string | undefined => {
  if (capNames.includes(name) && /tube$/.test(draft.kind)) return 'cap';
  if (draft.kind === 'tube' && /^\d+$/.test(name)) return 'tube pin';
  if (draft.kind === 'picture tube' && /^\d+$/.test(name)) return 'tube pin';
  if (draft.kind === 'plug' && /^\d+$/.test(name)) return 'plug pin';
  if (draft.kind === 'terminal strip' || draft.kind === 'ground lug' || isGrounded)
    return 'solder lug';
  if (draft.kind === 'transformer' && name.length > 2 && parseColour(name)) return 'pigtail';
  return undefined;
};

const buildHeaters = (
  type: TubeType | null,
  idOf: ReadonlyMap<string, string>,
  makeId: MakeId
): Part['elements'] => {
  const heaters = type ? heaterElements(type) : [];
  const orders = ordersBetween(null, null, heaters.length);
  const elements: NonNullable<Part['elements']> = {};
  heaters.forEach(({ from, to, volts, amps }, index) => {
    const first = idOf.get(from);
    const last = idOf.get(to);
    const order = orders[index];
    if (first === undefined || last === undefined || order === undefined) return;
    const id = makeId('element');
    elements[id] = { id, order, kind: 'heater', from: first, to: last, volts, amps };
  });
  return Object.keys(elements).length > 0 ? elements : undefined;
};

/** Builds the part. @param reference as it will be shown, for drafts without a name of their own */
export const buildPart = (
  draft: PartDraft,
  place: { readonly unit: string; readonly order: string; readonly reference: string },
  makeId: MakeId
): BuiltPart => {
  const { plans, bareNames } = planTerminals(draft);
  const orders = ordersBetween(null, null, plans.length);
  const terminals: Record<string, Terminal> = {};
  const idOf = new Map<string, string>();
  plans.forEach((plan, index) => {
    const id = makeId('terminal');
    const ending = endingOf(draft, plan);
    idOf.set(plan.name.toLowerCase(), id);
    terminals[id] = {
      id,
      order: orders[index] ?? 'a0',
      name: plan.name,
      ...(plan.offset ? { offset: plan.offset } : {}),
      ...(ending === undefined ? {} : { ending }),
      ...(plan.isGrounded ? { grounded: true } : {})
    };
  });
  const type = findDraftBase(draft)?.type ?? null;
  const elements = buildHeaters(type, idOf, makeId);
  const part: Part = {
    id: makeId('part'),
    order: place.order,
    unit: place.unit,
    kind: kindOf(draft),
    reference: place.reference,
    ...(draft.type === null ? {} : { type: draft.type }),
    ...(draft.does === null ? {} : { function: draft.does }),
    terminals,
    ...(elements ? { elements } : {})
  };
  return { part, idOf, bareIds: bareNames.map((name) => idOf.get(name) ?? '') };
};

/** True where a wire was given a pin that the base does not have. */
export const pinsBeyondBase = (draft: PartDraft): readonly string[] => {
  const known = findDraftBase(draft);
  if (!known || hasOnePoint(draft)) return [];
  return [...draft.terminals.values()]
    .map(({ name }) => name)
    .filter((name) => /^\d+$/.test(name) && (Number(name) < 1 || Number(name) > known.base.pins));
};
