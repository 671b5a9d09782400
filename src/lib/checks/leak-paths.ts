// How the chassis hangs on the power line: with the plug either way round, with the switches open and
// closed, through whatever resistors, heaters and capacitors lie between.
import { switchNets, type SwitchedNets, type SwitchPosition } from '#study/switch-positions.ts';
import type { PlacedElement, Study, TerminalEntry } from '#study/index.ts';
import {
  add,
  divide,
  magnitude,
  multiply,
  nothing,
  reduceTo,
  type Complex
} from './complex-network.ts';
import { isLineSource } from './line-terminals.ts';

/** Where the line comes in: two terminals. */
export interface LineEntry {
  readonly first: TerminalEntry;
  readonly second: TerminalEntry;
  readonly volts: number;
}

export interface Leak {
  readonly switches: SwitchPosition;
  /** The terminal that is live; the other one is at ground. */
  readonly live: TerminalEntry;
  /** Through a person who joins the chassis to ground, A. */
  readonly amps: number;
  /** No part lies between. */
  readonly isDirect: boolean;
  /** What lies between, the nearest way. */
  readonly through: readonly PlacedElement[];
}

/** A person, by the network that leakage is measured with: 1500 ohm; from memory. */
export const bodyOhms = 1500;

/** The higher of the usual line frequencies: capacitors pass most then, Hz. */
export const lineHertz = 60;

/** Where a plug is wired as the line and nobody drew its volts, V. */
const usualLineV = 117;

/** Where the line comes in. Without any source drawn: a plug of two pins that the line is wired to. */
export function findLineEntries(study: Study): readonly LineEntry[] {
  const { index, elements } = study;
  const drawn = elements.flatMap((element): LineEntry[] => {
    const { values, fromKey, toKey } = element;
    if (values.kind !== 'source' || toKey === null || !isLineSource(study, element)) return [];
    const [first, second] = [index.terminalByKey.get(fromKey), index.terminalByKey.get(toKey)];
    return first && second ? [{ first, second, volts: Math.abs(values.volts) }] : [];
  });
  if (drawn.length > 0) return drawn;
  return index.parts.flatMap((part): LineEntry[] => {
    const [first, second, third] = index.entriesOf.get(part) ?? [];
    if (part.kind !== 'plug' || !first || !second || third) return [];
    const isLine = [first, second].every(
      ({ key }) => study.nets.get(study.netOf.get(key) ?? '')?.roles.has('line') === true
    );
    return isLine ? [{ first, second, volts: usualLineV }] : [];
  });
}

/** All ways in which the chassis hangs on one line entry; none where it does not. */
export function findLeaks(study: Study, entry: LineEntry): readonly Leak[] {
  const positions: readonly SwitchPosition[] = switchNets(study, 'closed').hasSwitch
    ? ['closed', 'open']
    : ['closed'];
  return positions.flatMap((switches) => {
    const nets = switchNets(study, switches);
    const paths = listPaths(study, nets);
    return [entry.first, entry.second].flatMap((live): Leak[] => {
      const ground = live === entry.first ? entry.second : entry.first;
      const [hot, cold] = [nets.nodeAt(live.key), nets.nodeAt(ground.key)];
      if (hot === undefined || cold === undefined || hot === cold) return [];
      const amps = leakAmps(
        nets.chassis,
        hot,
        cold,
        paths,
        entry.volts * (1 + study.policy.highLine)
      );
      if (amps === 0) return [];
      const through = shortestWay(nets.chassis, hot, cold, paths);
      return [{ switches, live, amps, isDirect: hot === nets.chassis, through }];
    });
  });
}

interface Path {
  readonly element: PlacedElement;
  readonly from: number;
  readonly to: number;
  /** Siemens, at the line's frequency. */
  readonly admittance: Complex;
}

function listPaths({ elements }: Study, nets: SwitchedNets): readonly Path[] {
  return elements.flatMap((element): Path[] => {
    const admittance = admittanceOf(element);
    const from = nets.nodeAt(element.fromKey);
    const to =
      element.toKey === null ? nets.metalOf(element.part.unit) : nets.nodeAt(element.toKey);
    if (!admittance || from === undefined || to === undefined || from === to) return [];
    return [{ element, from, to, admittance }];
  });
}

/** What an element is to the line: resistors, heaters and capacitors are paths, tubes are none. A
 *  capacitor counts as good as new: one that leaks is worse. */
function admittanceOf({ values }: PlacedElement): Complex | null {
  switch (values.kind) {
    case 'resistor':
      return { re: 1 / Math.max(values.ohms, 1e-6), im: 0 };
    case 'heater':
      return values.amps > 0 && values.volts > 0 ? { re: values.amps / values.volts, im: 0 } : null;
    case 'capacitor':
      return values.farads > 0 ? { re: 0, im: 2 * Math.PI * lineHertz * values.farads } : null;
    default:
      return null;
  }
}

/** Current through a person who joins the chassis to the grounded side of the line, A. */
function leakAmps(
  chassis: number,
  hot: number,
  cold: number,
  paths: readonly Path[],
  volts: number
): number {
  if (chassis === cold || !isReached(chassis, hot, cold, paths)) return 0;
  if (hot === chassis) return volts / bodyOhms;
  const admittances = paths.map(({ from, to, admittance }) => ({ from, to, value: admittance }));
  const left = reduceTo([chassis, hot, cold], admittances);
  const between = (a: number, b: number): Complex =>
    left.get(a < b ? `${a} ${b}` : `${b} ${a}`) ?? nothing;
  const down = add(between(chassis, cold), { re: 1 / bodyOhms, im: 0 });
  const up = between(hot, chassis);
  const share = divide(up, add(up, down));
  return magnitude(multiply(share, { re: volts, im: 0 })) / bodyOhms;
}

/** True where a way leads from the live side to the chassis without passing the grounded side. */
const isReached = (chassis: number, hot: number, cold: number, paths: readonly Path[]): boolean =>
  hot === chassis || shortestWay(chassis, hot, cold, paths).length > 0;

/** The elements of a shortest way from the live side to the chassis that does not pass the other side,
 *  with those that lie beside each of them. */
function shortestWay(
  chassis: number,
  hot: number,
  cold: number,
  paths: readonly Path[]
): readonly PlacedElement[] {
  const at = new Map<number, Path[]>();
  for (const path of paths) {
    for (const node of [path.from, path.to]) {
      const known = at.get(node);
      if (known) known.push(path);
      else at.set(node, [path]);
    }
  }
  const cameBy = new Map<number, { readonly path: Path; readonly from: number } | null>([
    [hot, null]
  ]);
  const queue = [hot];
  for (const node of queue) {
    if (node === chassis) break;
    for (const path of at.get(node) ?? []) {
      const far = path.from === node ? path.to : path.from;
      if (far === cold || cameBy.has(far)) continue;
      cameBy.set(far, { path, from: node });
      queue.push(far);
    }
  }
  const way: PlacedElement[] = [];
  for (let step = cameBy.get(chassis); step; step = cameBy.get(step.from)) {
    const { from, path } = step;
    const far = path.from === from ? path.to : path.from;
    const beside = (at.get(from) ?? []).filter((other) => other.from === far || other.to === far);
    way.push(...beside.map(({ element }) => element).reverse());
  }
  return way.reverse();
}
