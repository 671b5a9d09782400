// The solver against hand sums, a general circuit simulator and two general matrix libraries.
import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { solveNetwork, type Branch } from '#physics/network/index.ts';

const resistance = (id: string, from: string, to: string, ohms: number): Branch => ({
  kind: 'resistance',
  id,
  from,
  to,
  ohms
});
const source = (id: string, from: string, to: string, volts: number, ohms = 0): Branch => ({
  kind: 'source',
  id,
  from,
  to,
  volts,
  ohms
});
const load = (id: string, from: string, to: string, amps: number): Branch => ({
  kind: 'load',
  id,
  from,
  to,
  amps
});
const join = (id: string, from: string, to: string): Branch => ({ kind: 'join', id, from, to });

describe('solveNetwork against ngspice 39.3 (Debian), netlists run and read on 2026-11-25', () => {
  it('heater daisy chain of resistances, 22 AWG runs of 12, 6 and 6 in', () => {
    const { volts, amps, faults } = solveNetwork({
      reference: ['0'],
      branches: [
        source('V1', '0', 's', 6.3),
        resistance('Rw1', 's', 'a', 0.01614),
        resistance('Rh1', 'a', '0', 10.5),
        resistance('Rw2', 'a', 'b', 0.00807),
        resistance('Rh2', 'b', '0', 14),
        resistance('Rw3', 'b', 'c', 0.00807),
        resistance('Rh3', 'c', '0', 21)
      ]
    });
    expect(faults).toEqual([]);
    expect(volts.get('a')).toBeCloseTo(6.278299, 5);
    expect(volts.get('b')).toBeCloseTo(6.272275, 5);
    expect(volts.get('c')).toBeCloseTo(6.269865, 5);
    expect(amps.get('V1')).toBeCloseTo(1.34452, 5);
    expect(amps.get('Rw1')).toBeCloseTo(1.34452, 5);
  });

  it('the same chain with constant currents', () => {
    const { volts, amps } = solveNetwork({
      reference: ['0'],
      branches: [
        source('V1', '0', 's', 6.3),
        resistance('Rw1', 's', 'a', 0.01614),
        load('Ih1', 'a', '0', 0.6),
        resistance('Rw2', 'a', 'b', 0.00807),
        load('Ih2', 'b', '0', 0.45),
        resistance('Rw3', 'b', 'c', 0.00807),
        load('Ih3', 'c', '0', 0.3)
      ]
    });
    expect(volts.get('a')).toBeCloseTo(6.278211, 5);
    expect(volts.get('b')).toBeCloseTo(6.272159, 5);
    expect(volts.get('c')).toBeCloseTo(6.269738, 5);
    expect(amps.get('V1')).toBeCloseTo(1.35, 9);
  });

  it('a series string on 120 V', () => {
    const { volts, amps } = solveNetwork({
      reference: ['0'],
      branches: [
        source('line', '0', 'hot', 120),
        resistance('Rdrop', 'hot', 'n0', 33),
        resistance('Rh1', 'n0', 'n1', 20.83333),
        resistance('Rh2', 'n1', 'n2', 10.5),
        resistance('Rh3', 'n2', '0', 135.66667)
      ]
    });
    expect(amps.get('Rh3')).toBeCloseTo(0.6, 6);
    expect(volts.get('n0')).toBeCloseTo(100.2, 4);
    expect(volts.get('n1')).toBeCloseTo(87.7, 4);
    expect(volts.get('n2')).toBeCloseTo(81.4, 4);
  });
});

describe('solveNetwork on circuits that do not hold', () => {
  it('names the loop that shorts an ideal source, and gives no figures for it', () => {
    const { volts, faults } = solveNetwork({
      reference: ['0'],
      branches: [
        source('supply', '0', 'a', 285),
        join('wire 7', 'a', 'b'),
        join('wire 8', 'b', '0'),
        source('other', '0', 'x', 6.3),
        resistance('heater', 'x', 'b', 10)
      ]
    });
    expect(faults.map(({ kind }) => kind)).toEqual(['shorted']);
    expect([...(faults[0]?.branches ?? [])].sort()).toEqual(['supply', 'wire 7', 'wire 8']);
    expect(volts.get('a')).toBeNull();
  });

  it('names a source with series ohms that is shorted by wires', () => {
    const { faults, amps } = solveNetwork({
      reference: ['0'],
      branches: [source('winding', '0', 'a', 6.3, 0.1), join('wire 3', 'a', '0')]
    });
    expect(faults).toEqual([
      { kind: 'shorted', nodes: ['0', 'a'], branches: ['winding', 'wire 3'] }
    ]);
    expect(amps.get('winding')).toBeCloseTo(63, 9);
  });

  it('solves a floating island to a node of its own and says so', () => {
    const { volts, origin, amps, faults } = solveNetwork({
      reference: ['chassis'],
      branches: [
        resistance('bleeder', 'chassis', 'k', 1e6),
        source('line', 'B-', 'hot', 117),
        resistance('string', 'hot', 'B-', 780)
      ]
    });
    expect(faults.map(({ kind, nodes }) => [kind, [...nodes].sort()])).toEqual([
      ['floating', ['B-', 'hot']]
    ]);
    expect(origin.get('hot')).toBe('B-');
    expect(volts.get('hot')).toBeCloseTo(117, 9);
    expect(amps.get('string')).toBeCloseTo(0.15, 9);
    expect(origin.get('k')).toBeNull();
  });

  it('names a load that nothing feeds', () => {
    const { volts, faults, amps } = solveNetwork({
      reference: ['0'],
      branches: [load('plate', 'a', '0', 0.01), join('wire 5', 'a', 'b')]
    });
    expect(faults.map(({ kind }) => kind)).toEqual(['starved', 'floating']);
    expect(faults[0]?.branches).toEqual(['plate']);
    expect(volts.get('a')).toBeNull();
    expect(amps.get('plate')).toBeNull();
  });

  it('gives the current of a wire without resistance where only one path exists', () => {
    const { amps } = solveNetwork({
      reference: ['0', 'lug'],
      branches: [
        source('supply', '0', 'a', 100),
        join('only', 'a', 'b'),
        join('left', 'b', 'c'),
        join('right', 'c', 'b'),
        resistance('R', 'c', 'lug', 1000)
      ]
    });
    expect(amps.get('only')).toBeCloseTo(0.1, 12);
    expect(amps.get('left')).toBeNull();
    expect(amps.get('right')).toBeNull();
    expect(amps.get('supply')).toBeCloseTo(0.1, 12);
  });
});

/** A connected random circuit: a spanning chain, extra resistances, sources with ohms, loads. */
const circuits = fc
  .record({
    size: fc.integer({ min: 2, max: 40 }),
    seed: fc.array(
      fc.record({ a: fc.nat(), b: fc.nat(), x: fc.double({ min: -3, max: 5, noNaN: true }) }),
      {
        minLength: 4,
        maxLength: 120
      }
    )
  })
  .map(({ size, seed }) => {
    const branches: Branch[] = [];
    for (let node = 1; node < size; node += 1)
      branches.push(resistance(`c${node}`, `n${node - 1}`, `n${node}`, 0.01 + (node % 7)));
    seed.forEach(({ a, b, x }, index) => {
      const from = `n${a % size}`;
      const to = `n${b % size}`;
      if (index % 3 === 0) branches.push(source(`s${index}`, from, to, x * 50, 0.5 + Math.abs(x)));
      else if (index % 3 === 1) branches.push(load(`l${index}`, from, to, x / 10));
      else branches.push(resistance(`r${index}`, from, to, 10 ** x));
    });
    return { size, branches };
  });

/** Dense conductances and currents of the circuit, node 0 left out. */
const dense = (size: number, branches: readonly Branch[]): { g: number[][]; i: number[] } => {
  const g = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const i = new Array<number>(size).fill(0);
  for (const branch of branches) {
    const a = Number(branch.from.slice(1));
    const b = Number(branch.to.slice(1));
    if (a === b) continue;
    if (branch.kind === 'load') {
      i[a]! -= branch.amps;
      i[b]! += branch.amps;
    } else if (branch.kind !== 'join') {
      const s = 1 / branch.ohms;
      const rise = branch.kind === 'source' ? branch.volts : 0;
      g[a]![a]! += s;
      g[b]![b]! += s;
      g[a]![b]! -= s;
      g[b]![a]! -= s;
      i[a]! -= s * rise;
      i[b]! += s * rise;
    }
  }
  return { g: g.slice(1).map((row) => row.slice(1)), i: i.slice(1) };
};

describe('solveNetwork against general matrix libraries', () => {
  it('agrees with ml-matrix and mathjs, and obeys the current law at every node', () => {
    fc.assert(
      fc.property(circuits, ({ size, branches }) => {
        const { volts, amps, faults } = solveNetwork({ reference: ['n0'], branches });
        expect(faults).toEqual([]);
        const { g, i } = dense(size, branches);
        const byMatrix = solve(new Matrix(g), Matrix.columnVector(i)).to1DArray();
        const byMathjs = (lusolve(g, i) as number[][]).map((row) => row[0] ?? 0);
        const scale = Math.max(1, ...byMatrix.map(Math.abs));
        for (let node = 1; node < size; node += 1) {
          const own = volts.get(`n${node}`) ?? Number.NaN;
          expect(Math.abs(own - (byMatrix[node - 1] ?? 0)) / scale).toBeLessThan(1e-7);
          expect(Math.abs(own - (byMathjs[node - 1] ?? 0)) / scale).toBeLessThan(1e-7);
          let balance = 0;
          let most = 0;
          for (const branch of branches) {
            const flow = amps.get(branch.id) ?? 0;
            if (branch.from === branch.to) continue;
            if (branch.from === `n${node}`) balance -= flow;
            if (branch.to === `n${node}`) balance += flow;
            most = Math.max(most, Math.abs(flow));
          }
          expect(Math.abs(balance)).toBeLessThan(1e-6 * Math.max(1, most));
        }
      }),
      { seed: 20_261_125, numRuns: 150 }
    );
  });
});
