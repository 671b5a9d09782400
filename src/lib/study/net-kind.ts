// What kind of net it is: a supply rail or not, and the name that people know it by.
import type { ChassisDocument, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatVolts } from '#quantity/index.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { FunctionRole } from './function-words.ts';
import type { NetGroup } from './group-nets.ts';
import { terminalText } from './index-document.ts';
import type { Potential } from './potentials.ts';
import type { DocumentIndex } from './types.ts';

/** Below this a supply is a bias or a battery for filaments, and the floor of a rail is beside the
 *  point. 60 V dc is where published touch limits begin. */
const leastRailV = 60;

/** The roles of all wires on the net. */
export function rolesOfWires(
  wires: readonly Wire[],
  rolesOf: (text: string | undefined) => ReadonlySet<FunctionRole>
): ReadonlySet<FunctionRole> {
  const roles = new Set<FunctionRole>();
  for (const wire of wires) for (const role of rolesOf(wire.function)) roles.add(role);
  return roles;
}

/** Nets that a dc source of a part stands on, at the end that is not the lower one. */
export function netsWithDcSource(elements: readonly PlacedElement[]): ReadonlySet<number> {
  const nets = new Set<number>();
  for (const { values, from, to } of elements) {
    if (values.kind !== 'source' || values.current !== 'dc') continue;
    nets.add(values.volts < 0 ? to : from);
  }
  return nets;
}

/** True for a supply rail: a wire says so, or a dc source feeds it. Heaters, the power line and the
 *  chassis are none, and neither is what is known to stand at a few volts. */
export function isSupplyNet(
  group: NetGroup,
  roles: ReadonlySet<FunctionRole> | undefined,
  potential: Potential | undefined,
  hasDcSource: boolean
): boolean {
  if (group.isChassis || (!hasDcSource && roles?.has('supply') !== true)) return false;
  const dcV = Math.abs(potential?.dcV?.value ?? Infinity);
  const coldDcV = Math.abs(potential?.coldDcV?.value ?? 0);
  return Math.max(dcV, coldDcV) > leastRailV;
}

/** "chassis", "B+ 285 V", "heaters 6.3 V", "V3-5": the net in people's words. */
export function nameNet(
  document: ChassisDocument,
  index: DocumentIndex,
  group: NetGroup,
  roles: ReadonlySet<FunctionRole>,
  isSupply: boolean,
  { dcV = null, acV = null }: Partial<Pick<Potential, 'dcV' | 'acV'>>
): string {
  if (group.isChassis) return 'chassis';
  if (group.metalOf !== null) {
    return `metal of ${findElement(document.units, group.metalOf)?.name ?? group.metalOf}`;
  }
  const words = commonFunction(group.wires);
  const dcText = dcV === null || dcV.value === 0 ? '' : ` ${formatVolts(dcV.value)}`;
  if (isSupply) return `${words ?? 'supply'}${hasVolts(words) ? '' : dcText}`;
  if (roles.has('heater') && (dcV === null || dcV.value === 0)) {
    return acV === null ? 'heaters' : `heaters ${formatVolts(acV.value)}`;
  }
  if (words !== undefined) return words;
  const first = group.terminals[0];
  const entry = first === undefined ? undefined : index.terminalByKey.get(first);
  return entry ? terminalText(document, entry) : group.id;
}

const hasVolts = (words: string | undefined): boolean =>
  words !== undefined && /\d\s*k?V\b/i.test(words);

/** The function that most of the wires have; the first of them where several are as common. */
function commonFunction(wires: readonly Wire[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { function: text } of wires) {
    if (text !== undefined && text !== '') counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  let best: string | undefined;
  let most = 0;
  for (const [text, count] of counts) {
    if (count > most) {
      best = text;
      most = count;
    }
  }
  return best;
}
