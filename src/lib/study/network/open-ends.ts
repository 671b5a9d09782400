// What nobody described: terminals of parts whose innards are not known, tubes whose current nobody
// gave, wires followed only halfway. Volts that are reckoned past them may not be all there is.
import { isKnownElement, terminalLabel, type Id, type Part, type Wire } from '#document/index.ts';
import type { PinRole } from '#handbook/pin-functions.ts';
import type { TubeType } from '#handbook/tube-types.ts';
import { wireName } from '../amounts.ts';
import { tubeTypeOf } from '../circuit-elements.ts';
import { elementFromValue } from '../element-from-value.ts';
import type { PartsIndex } from '../index-parts.ts';
import type { WireSlot } from '../index-wires.ts';
import { keepItems } from '../same.ts';
import type { TerminalEntry } from '../types.ts';

/** `draws`: a plate or screen, which can only pull a rail towards the chassis. `tube`: another
 *  electrode of a tube; nothing while it is cold. `anything`: it may feed or draw, hot or cold. */
export type OpenEffect = 'draws' | 'tube' | 'anything';

export interface OpenEnd {
  /** Number of the terminal. */
  readonly terminal: number;
  readonly effect: OpenEffect;
  /** The terminal itself, or the wire that leads on from it nobody knows where. */
  readonly of: TerminalEntry | Wire;
}

/** "V10-1", "the far end of wire 147". */
export const openEndLabel = ({ of }: OpenEnd): string =>
  'terminal' in of
    ? terminalLabel((of as TerminalEntry).part, (of as TerminalEntry).terminal)
    : `the far end of ${wireName(of as Wire)}`;

/** Parts that only hold what ends there. */
const passive: ReadonlySet<string> = new Set(['terminal strip', 'splice', 'ground lug', 'clip']);
const mating: ReadonlySet<string> = new Set(['plug', 'jack']);

/** Electrodes that take no part in the circuit, and those that only draw. */
const quiet: ReadonlySet<PinRole> = new Set([
  'heater',
  'heater tap',
  'no connection',
  'shell',
  'internal shield',
  'suppressor'
]);
const drawing: ReadonlySet<PinRole> = new Set(['plate', 'screen grid']);

const openOfPart = new WeakMap<Part, ReadonlyMap<Id, OpenEffect>>();

/** Terminals of a part of which nothing says what they do. Those of plugs and jacks are among them:
 *  they do nothing only while the part is mated. */
function openTerminals(part: Part): ReadonlyMap<Id, OpenEffect> {
  const known = openOfPart.get(part);
  if (known) return known;
  const described = new Set<Id>();
  for (const element of Object.values(part.elements ?? {})) {
    if (!isKnownElement(element)) continue;
    described.add(element.from);
    if (element.to !== undefined) described.add(element.to);
  }
  describeFilament(part, described);
  const open = new Map<Id, OpenEffect>();
  const isClosed = passive.has(part.kind) || elementFromValue(part) !== null;
  for (const { id, name, grounded } of isClosed ? [] : Object.values(part.terminals)) {
    if (described.has(id) || grounded === true) continue;
    const effect = effectOf(part, tubeTypeOf(part), name);
    if (effect !== null) open.set(id, effect);
  }
  openOfPart.set(part, open);
  return open;
}

/** Both ends of a filament are one electrode; and where it is said what a rectifier gives, its plates
 *  have nothing to add. */
function describeFilament(part: Part, described: Set<Id>): void {
  const type = tubeTypeOf(part);
  if (!type || described.size === 0) return;
  const terminals = Object.values(part.terminals);
  const idsOf = (pins: readonly string[]): readonly Id[] =>
    terminals.filter(({ name }) => pins.includes(name)).map(({ id }) => id);
  const filament = type.heater?.isFilament === true ? idsOf(type.heater.pins) : [];
  const isRectifier = rectifying.test(type.what);
  if (filament.some((id) => described.has(id))) for (const id of filament) described.add(id);
  if (isRectifier) {
    const plates = type.pinFunctions.filter(({ role }) => /plate/.test(role)).map(({ pin }) => pin);
    for (const id of idsOf([...plates, 'cap'])) described.add(id);
  }
}

const rectifying = /rectifier|damper/i;

function effectOf(part: Part, type: TubeType | null, name: string): OpenEffect | null {
  if (part.kind !== 'tube' && part.kind !== 'picture tube') return 'anything';
  const { heater = null } = type ?? {};
  const isHeater = heater?.pins.includes(name) === true || heater?.tap?.pin === name;
  if (isHeater && heater?.isFilament !== true) return null;
  const role = type?.pinFunctions.find(({ pin }) => pin === name)?.role;
  if (role !== undefined && quiet.has(role)) return null;
  // A rectifier feeds its rail, and one with a filament does so long before the set plays.
  if (!type || rectifying.test(type.what)) return 'anything';
  return role !== undefined && drawing.has(role) ? 'draws' : 'tube';
}

const endsOfParts = new WeakMap<PartsIndex, readonly OpenEnd[]>();

const endsOfWires = new WeakMap<WireSlot, OpenEnd>();

/** All open ends of a document, in its order.
 *  @param before given again where nothing changed */
export function listOpenEnds(
  parts: PartsIndex,
  slots: readonly WireSlot[],
  before?: readonly OpenEnd[]
): readonly OpenEnd[] {
  const known = endsOfParts.get(parts) ?? listOfParts(parts);
  endsOfParts.set(parts, known);
  const open: OpenEnd[] = [];
  for (const slot of slots) {
    const { wire, from, to } = slot;
    const end = from ?? to;
    if (!end || (from && to)) continue;
    const own = endsOfWires.get(slot) ?? { terminal: end.number, effect: 'anything', of: wire };
    endsOfWires.set(slot, own);
    open.push(own);
  }
  return open.length === 0 ? known : keepItems(before, [...known, ...open]);
}

function listOfParts(parts: PartsIndex): readonly OpenEnd[] {
  const mated = new Set<Id>();
  for (const { id, mates } of parts.parts) if (mates !== undefined) mated.add(id).add(mates);
  const open: OpenEnd[] = [];
  for (const [part, entries] of parts.entriesOf) {
    if (mating.has(part.kind) && mated.has(part.id)) continue;
    const effects = openTerminals(part);
    if (effects.size === 0) continue;
    for (const entry of entries) {
      const effect = effects.get(entry.terminal.id);
      if (effect) open.push({ terminal: entry.number, effect, of: entry });
    }
  }
  return open;
}
