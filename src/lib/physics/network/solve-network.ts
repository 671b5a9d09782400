// Nodal analysis of a whole chassis: every node its volts, every branch its amperes with a
// direction, and what is wrong with the circuit as data, never as an exception or a guess.
import { SumError } from '../sum-error.ts';
import type { Branch, Circuit, NetworkFault, NetworkSolution } from './circuit.ts';
import { floatingIslands, shortThrough } from './faults.ts';
import { idealCurrents } from './ideal-currents.ts';
import { solveConductances, type Conductance } from './star-mesh.ts';
import { buildSuperNodes, idealBranches } from './super-nodes.ts';

const checked = (branch: Branch): Branch => {
  const values: Record<string, number> =
    branch.kind === 'resistance'
      ? { ohms: branch.ohms }
      : branch.kind === 'source'
        ? { volts: branch.volts, ohms: branch.ohms }
        : branch.kind === 'load'
          ? { amps: branch.amps }
          : {};
  for (const [name, value] of Object.entries(values)) {
    if (!Number.isFinite(value) || (name === 'ohms' && value < 0))
      throw new SumError({
        problem: Number.isFinite(value) ? 'out of range' : 'not a number',
        input: `${name} of ${branch.id}`,
        value: String(value),
        limit: name === 'ohms' ? '0 ohm or more' : 'a finite number',
        wayOut: 'Correct the value of that branch.'
      });
  }
  return branch;
};

/** Solves a circuit for the volts of every node and the amperes of every branch.
 *  Formula:  Kirchhoff's current law at every node, I = (V from - V to) / R in every resistance
 *  Source:   Kirchhoff 1845; star-mesh elimination, Rosen 1924
 *  Valid:    linear elements, one frequency; a heater enters as the resistance V / I of its rating
 *  @throws SumError where a value is not finite or a resistance is negative */
export const solveNetwork = (circuit: Circuit): NetworkSolution => {
  const branches = circuit.branches.map(checked).filter((branch) => branch.from !== branch.to);
  const names: string[] = [];
  const nodeOf = new Map<string, number>();
  const numberOf = (name: string): number => {
    let node = nodeOf.get(name);
    if (node === undefined) {
      node = names.length;
      names.push(name);
      nodeOf.set(name, node);
    }
    return node;
  };
  const ends = branches.map((branch) => [numberOf(branch.from), numberOf(branch.to)] as const);
  const reference = circuit.reference.flatMap((name) => nodeOf.get(name) ?? []);
  const groups = buildSuperNodes(branches, nodeOf, reference);
  const groupAt = (node: number): number => groups.groupOf[node] ?? 0;
  const offsetAt = (node: number): number => groups.offsetV[node] ?? 0;
  const ideal = new Set(idealBranches(branches));

  // One matrix row a group: conductances between groups, and what is pressed into each.
  const conductances: Conductance[] = [];
  const injectedA = new Float64Array(groups.count);
  const inject = (group: number, amps: number): void => {
    injectedA[group] = (injectedA[group] ?? 0) + amps;
  };
  branches.forEach((branch, index) => {
    const [from, to] = ends[index] ?? [0, 0];
    const near = groupAt(from);
    const far = groupAt(to);
    if (ideal.has(branch) || near === far) return;
    if (branch.kind === 'load') {
      inject(near, -branch.amps);
      inject(far, branch.amps);
    } else if (branch.kind === 'resistance' || branch.kind === 'source') {
      const siemens = 1 / branch.ohms;
      const rise = branch.kind === 'source' ? branch.volts : 0;
      const amps = siemens * (offsetAt(from) - offsetAt(to) + rise);
      conductances.push({ from: near, to: far, siemens });
      inject(near, -amps);
      inject(far, amps);
    }
  });
  const { volts, fixed, leftoverA } = solveConductances(groups.count, conductances, injectedA);
  const islandOf = (node: number): number => fixed[groupAt(node)] ?? 0;

  const faults: NetworkFault[] = [];
  const distrusted = new Set<number>();
  for (const branch of groups.contradictions) {
    distrusted.add(islandOf(nodeOf.get(branch.from) ?? 0));
    faults.push(shortThrough(branch, [...ideal]));
  }
  branches.forEach((branch, index) => {
    const [from, to] = ends[index] ?? [0, 0];
    if (branch.kind !== 'source' || branch.ohms === 0 || branch.volts === 0) return;
    if (groupAt(from) === groupAt(to) && offsetAt(from) === offsetAt(to))
      faults.push(shortThrough(branch, [...ideal]));
  });
  const scale = injectedA.reduce((most, amps) => Math.max(most, Math.abs(amps)), 1e-12);
  for (const [island, amps] of leftoverA)
    if (Math.abs(amps) > 1e-9 * scale) {
      distrusted.add(island);
      const starving = branches.filter(
        (branch, index) =>
          branch.kind === 'load' && (ends[index] ?? []).some((node) => islandOf(node) === island)
      );
      faults.push({
        kind: 'starved',
        nodes: names.filter((_, node) => islandOf(node) === island),
        branches: starving.map((branch) => branch.id)
      });
    }
  faults.push(...floatingIslands(names, branches, nodeOf, islandOf));

  const voltsOf = (node: number): number | null =>
    distrusted.has(islandOf(node)) ? null : (volts[groupAt(node)] ?? 0) + offsetAt(node);
  const firstOf = new Map<number, number>();
  names.forEach((_, node) => {
    const island = islandOf(node);
    if (island !== 0 && !firstOf.has(island)) firstOf.set(island, node);
  });

  const amps = new Map<string, number | null>();
  const inflowA = new Float64Array(names.length);
  branches.forEach((branch, index) => {
    if (ideal.has(branch)) return;
    const [from, to] = ends[index] ?? [0, 0];
    const flow = flowIn(branch, voltsOf(from), voltsOf(to), distrusted.has(islandOf(from)));
    amps.set(branch.id, flow);
    inflowA[from] = (inflowA[from] ?? 0) - (flow ?? Number.NaN);
    inflowA[to] = (inflowA[to] ?? 0) + (flow ?? Number.NaN);
  });
  // The chassis is one piece of metal: its nodes count as one when currents are followed.
  const [chassis] = reference;
  const asOne = (node: number): number =>
    chassis !== undefined && reference.includes(node) ? chassis : node;
  for (const node of reference)
    if (chassis !== undefined && node !== chassis) {
      inflowA[chassis] = (inflowA[chassis] ?? 0) + (inflowA[node] ?? 0);
      inflowA[node] = 0;
    }
  const edges = branches.flatMap((branch, index) => {
    const [from, to] = ends[index] ?? [0, 0];
    return ideal.has(branch) ? [{ id: branch.id, from: asOne(from), to: asOne(to) }] : [];
  });
  for (const [id, flow] of idealCurrents(names.length, edges, inflowA)) amps.set(id, flow);
  for (const branch of circuit.branches) if (!amps.has(branch.id)) amps.set(branch.id, null);

  return {
    volts: new Map(
      names.map((name, node) => {
        const own = voltsOf(node);
        const first = firstOf.get(islandOf(node));
        const base = first === undefined ? 0 : voltsOf(first);
        return [name, own === null || base === null ? null : own - base];
      })
    ),
    amps,
    origin: new Map(
      names.map((name, node) => {
        const first = firstOf.get(islandOf(node));
        return [name, first === undefined ? null : (names[first] ?? null)];
      })
    ),
    faults
  };
};

const flowIn = (
  branch: Branch,
  fromV: number | null,
  toV: number | null,
  isDistrusted: boolean
): number | null => {
  if (branch.kind === 'load') return isDistrusted ? null : branch.amps;
  if (fromV === null || toV === null || branch.kind === 'join') return null;
  return (fromV - toV + (branch.kind === 'source' ? branch.volts : 0)) / branch.ohms;
};
