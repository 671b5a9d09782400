// What kind of net it is: a supply rail or not, and the name that people know it by.
import type { ChassisDocument, Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatVolts } from '#quantity/index.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { FunctionRole, RoleReader } from './function-words.ts';
import type { NetGroup } from './group-nets.ts';
import { terminalText } from './index-document.ts';
import type { Amount, Net, TerminalEntry } from './types.ts';

/** Below this a supply is a bias or a battery for filaments, and the floor of a rail is beside the
 *  point. 60 V dc is where published touch limits begin. */
const leastRailV = 60;

/** The roles of all wires on the net. */
export function rolesOfWires(
  document: ChassisDocument,
  { wires }: NetGroup,
  rolesOf: RoleReader
): ReadonlySet<FunctionRole> {
  const roles = new Set<FunctionRole>();
  for (const text of functionsOf(document, wires))
    for (const role of rolesOf(text)) roles.add(role);
  return roles;
}

/** What the wires are said to do; those of which nothing is said left out. */
const functionsOf = (document: ChassisDocument, wires: readonly Id[]): readonly string[] =>
  wires.map((id) => findElement(document.wires, id)?.function ?? '').filter((text) => text !== '');

const withDcSource = new WeakMap<readonly PlacedElement[], ReadonlySet<NetGroup>>();

/** Nets that a dc source of a part stands on, at the end that is not the lower one. */
export function netsWithDcSource(elements: readonly PlacedElement[]): ReadonlySet<NetGroup> {
  const known = withDcSource.get(elements);
  if (known) return known;
  const nets = new Set<NetGroup>();
  for (const { values, from, to } of elements) {
    if (values.kind !== 'source' || values.current !== 'dc') continue;
    nets.add(values.volts < 0 ? to : from);
  }
  withDcSource.set(elements, nets);
  return nets;
}

/** True for a supply rail: a wire says so, or a dc source feeds it. Heaters, the power line and the
 *  chassis are none, and neither is what is known to stand at a few volts. */
export function isSupplyNet(
  group: NetGroup,
  roles: ReadonlySet<FunctionRole>,
  { dcV: dc, pulseV, coldDcV: cold }: Pick<Net, 'dcV' | 'pulseV' | 'coldDcV'>,
  hasDcSource: boolean
): boolean {
  if (group.isChassis || (!hasDcSource && !roles.has('supply'))) return false;
  const dcV = Math.abs(dc?.value ?? Infinity);
  // A point of the sweep circuit that swings by more than its dc is not what people call a rail.
  if ((pulseV?.value ?? 0) > dcV) return false;
  const coldDcV = Math.abs(cold?.value ?? 0);
  return Math.max(dcV, coldDcV) > leastRailV;
}

/** "chassis", "B+ 285 V", "heaters 6.3 V", "V3-5": the net in people's words. */
export function nameNet(
  document: ChassisDocument,
  findEntry: (key: string) => TerminalEntry | undefined,
  group: NetGroup,
  isSupply: boolean,
  { dcV, acV }: Pick<Net, 'dcV' | 'acV'>,
  rolesOf: RoleReader
): string {
  if (group.isChassis) return 'chassis';
  if (group.metalOf !== null) {
    return `metal of ${findElement(document.units, group.metalOf)?.name ?? group.metalOf}`;
  }
  const texts = functionsOf(document, group.wires);
  if (isSupply) return supplyName(texts, dcV, rolesOf);
  const words = mostCommon(texts);
  if (words !== undefined && rolesOf(words).has('heater') && (dcV === null || dcV.value === 0)) {
    return acV === null ? 'heaters' : `heaters ${formatVolts(acV.value)}`;
  }
  if (words !== undefined) return words;
  const first = group.terminals[0];
  const entry = first === undefined ? undefined : findEntry(first);
  return entry ? terminalText(document, entry) : group.id;
}

/** What a wire calls the rail, rather than what one of its users is called; with its volts. */
function supplyName(texts: readonly string[], dcV: Amount | null, rolesOf: RoleReader): string {
  const plain = texts.filter((text) => rolesOf(text).has('supply') && !rolesOf(text).has('sweep'));
  const words = mostCommon(plain) ?? mostCommon(texts) ?? 'supply';
  const hasVolts = /\d\s*k?V\b/i.test(words);
  return dcV === null || hasVolts ? words : `${words} ${formatVolts(dcV.value)}`;
}

/** The text that occurs most often; the first of them where several are as common. */
function mostCommon(texts: readonly string[]): string | undefined {
  const counts = new Map<string, number>();
  let best: string | undefined;
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  for (const [text, count] of counts) {
    if (best === undefined || count > (counts.get(best) ?? 0)) best = text;
  }
  return best;
}
