// Two half-traced wires turn out to be one: "this blue is that blue". The first keeps its number and gets
// the other's known end; what was noted of either is kept, and where the two say different things the
// second's word goes into the notes. One step of undo.
import { changeElement, doMany, removeElement, setWireFields } from '#document/edits.ts';
import { wireStates, type Edit, type Fields, type Id, type Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { wireName } from '../core/words.ts';
import { otherEnd } from './leads.ts';

export type Joined =
  { readonly ok: true; readonly edit: Edit } | { readonly ok: false; readonly why: string };

const no = (why: string): Joined => ({ ok: false, why });

/** The one end of a half-traced wire that is known; null where both are, or neither. */
export const knownEndOf = (wire: Wire): 'from' | 'to' | null => {
  const known = { from: wire.from.at !== undefined, to: wire.to.at !== undefined };
  if (known.from === known.to) return null;
  return known.from ? 'from' : 'to';
};

type Plain = Readonly<Record<string, unknown>>;
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const wordOf = (key: string): string =>
  ({ awg: 'gauge', dcV: 'V dc', acV: 'V ac', pulseV: 'V pulse' })[key] ??
  key
    .replace(/(Mm|V|C)$/, '')
    .replaceAll(/([A-Z])/g, ' $1')
    .toLowerCase();

/** What the second adds to the first, and what they disagree on: "gauge 20". Texts of many words are
 *  put together by the caller. */
const fill = (first: Plain, second: Plain, disagreed: string[], under = ''): Plain => {
  const added: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(second)) {
    const own = first[key];
    if (own === undefined) added[key] = value;
    else if (isPlain(own) && isPlain(value)) {
      const inner = fill(own, value, disagreed, `${under}${wordOf(key)} `);
      if (Object.keys(inner).length > 0) added[key] = inner;
    } else if (!isSame(own, value)) {
      const text = typeof value === 'object' ? JSON.stringify(value) : String(value);
      disagreed.push(`${under}${wordOf(key)} ${text}`);
    }
  }
  return added;
};

/** Fields that are put together by rules of their own. */
const ownRules: ReadonlySet<string> = new Set([
  'id',
  'order',
  'number',
  'from',
  'to',
  'notes',
  'dress',
  'critical',
  'state',
  'route',
  'carries',
  'found'
]);

const joinTexts = (...texts: readonly (string | undefined)[]): string =>
  [...new Set(texts.filter((text) => text !== undefined && text !== ''))].join('; ');

const withText = (key: string, own: string | undefined, all: string): Fields =>
  all === '' || all === own ? {} : { [key]: all };

/** The supports that are known from either end, in the order from the first wire's start. */
const joinRoutes = (
  keep: Wire,
  keepEnd: 'from' | 'to',
  gone: Wire,
  goneEnd: 'from' | 'to'
): Fields => {
  const outward = (wire: Wire, end: 'from' | 'to'): readonly Id[] => {
    const supports = wire.route?.supports ?? [];
    return end === 'from' ? supports : [...supports].reverse();
  };
  if (gone.route === undefined) return {};
  const near = outward(keep, keepEnd);
  const far = [...outward(gone, goneEnd)].reverse().filter((id) => !near.includes(id));
  const along = [...near, ...far];
  const supports = keepEnd === 'from' ? along : [...along].reverse();
  const by = keep.route?.by === 'hand' || gone.route.by === 'hand' ? 'hand' : 'layout';
  return { route: { supports, by } };
};

const lessFar = (a: Wire, b: Wire): Wire['state'] =>
  wireStates.indexOf(a.state) <= wireStates.indexOf(b.state) ? a.state : b.state;

/** Photos and callouts of the wire that goes speak of the one that stays. */
const moveWhatPointsTo = ({ document }: Study, gone: Id, stays: Id): Edit[] => [
  ...Object.values(document.photos).flatMap(({ id, of }) =>
    of !== undefined && 'wire' in of && of['wire'] === gone
      ? [changeElement('photo', id, { of: { wire: stays } })]
      : []
  ),
  ...Object.values(document.callouts).flatMap(({ id, of }) =>
    of?.kind === 'wire' && of.id === gone
      ? [changeElement('callout', id, { of: { id: stays } })]
      : []
  )
];

/** One wire of two: `keep` stays with its number, `gone` goes. Says why not where either is missing,
 *  is not half-traced, or both begin at one terminal. */
export const joinWires = (study: Study, keep: Id, gone: Id): Joined => {
  const { document, index } = study;
  const first = document.wires[keep];
  const second = document.wires[gone];
  if (first === undefined || second === undefined) return no('one of the two wires is gone');
  if (keep === gone) return no('that is the same wire: pick another');
  const firstEnd = knownEndOf(first);
  const secondEnd = knownEndOf(second);
  if (firstEnd === null || secondEnd === null) {
    const whole = firstEnd === null ? first : second;
    return no(`${wireName(whole)} is not half-traced: only wires with one known end can be joined`);
  }
  const known = second[secondEnd];
  if (isSame(first[firstEnd].at, known.at)) {
    return no(`both begin at ${index.labelOf(known)}: they are two leads there, not one wire`);
  }
  const free = otherEnd(firstEnd);
  const disagreed: string[] = [];
  const rest = (wire: Wire): Plain =>
    Object.fromEntries(Object.entries(wire).filter(([key]) => !ownRules.has(key)));
  const inner = { found: first.found, carries: first.carries };
  const added = {
    ...fill(rest(first), rest(second), disagreed),
    ...fill(inner, { found: second.found, carries: second.carries }, disagreed)
  };
  const written = [first[free].as, second[otherEnd(secondEnd)].as].map((text) =>
    text === undefined || text === '' ? undefined : `written for the end: ${text}`
  );
  const of = second.number === '' ? 'a wire without a number' : `wire ${second.number}`;
  const story = [
    `joined with ${of} from ${index.labelOf(known)}`,
    ...(disagreed.length === 0 ? [] : [`there: ${disagreed.join(', ')}`])
  ].join('; ');
  const dress = joinTexts(first.dress, second.dress);
  const critical = { ...second.critical, ...first.critical };
  for (const key of ['keepLength', 'keepPlace', 'keepShort'] as const) {
    if (first.critical?.[key] === true || second.critical?.[key] === true) critical[key] = true;
  }
  const end = { ...known, as: known.as ?? null };
  const fields = {
    ...added,
    [free]: end,
    ...joinRoutes(first, firstEnd, second, secondEnd),
    ...withText('notes', first.notes, joinTexts(first.notes, second.notes, ...written, story)),
    ...withText('dress', first.dress, dress),
    ...(Object.keys(critical).length === 0 ? {} : { critical }),
    state: lessFar(first, second)
  };
  const names = [first, second].map(({ number }) => number || 'without a number').join(' and ');
  return {
    ok: true,
    edit: doMany(`join wires ${names}`, [
      setWireFields(keep, fields as Parameters<typeof setWireFields>[1]),
      ...moveWhatPointsTo(study, gone, keep),
      removeElement('wire', gone)
    ])
  };
};
