// Our solver against a general circuit simulator: ngspice 39.3, its netlists and answers kept as
// fixtures, and run live where it is installed.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { solveNetwork, type Branch } from '#physics/network/index.ts';
import { parseQuantity } from '#quantity/index.ts';

const folder = new URL('./ngspice/', import.meta.url);

const valueOf = (text: string): number => {
  const read = parseQuantity(text, 'resistance');
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

/** Resistors, dc voltage sources and dc current sources of a netlist. */
const readNetlist = (text: string): Branch[] =>
  text.split('\n').flatMap((line): Branch[] => {
    const [name = '', a = '', b = '', ...rest] = line.trim().split(/\s+/);
    const value = rest[rest.length - 1] ?? '';
    if (/^R/.test(name))
      return [{ kind: 'resistance', id: name, from: a, to: b, ohms: valueOf(value) }];
    if (/^V/.test(name))
      return [{ kind: 'source', id: name, from: b, to: a, volts: Number(value), ohms: 0 }];
    if (/^I/.test(name)) return [{ kind: 'load', id: name, from: a, to: b, amps: Number(value) }];
    return [];
  });

const readAnswers = (text: string): Map<string, number> =>
  new Map(
    [...text.matchAll(/^v\((\w+)\) = (\S+)$/gm)].map((match) => [match[1]!, Number(match[2])])
  );

const hasNgspice = spawnSync('ngspice', ['--version']).status === 0;
const netlists = readdirSync(folder).filter((name) => name.endsWith('.cir'));

describe('network against ngspice', () => {
  it('finds its netlists', () => {
    expect(netlists.length).toBe(5);
  });

  for (const name of netlists) {
    const netlist = readFileSync(new URL(name, folder), 'utf8');
    const kept = readAnswers(readFileSync(new URL(name.replace('.cir', '.out'), folder), 'utf8'));

    it(`${name} as kept`, () => {
      const { volts, faults } = solveNetwork({ reference: ['0'], branches: readNetlist(netlist) });
      expect(faults).toEqual([]);
      expect(kept.size).toBeGreaterThan(2);
      // ngspice's own relative tolerance is 1e-3 for iterations; linear circuits come out far closer.
      for (const [node, expected] of kept)
        expect(
          Math.abs((volts.get(node) ?? Number.NaN) - expected) / Math.abs(expected),
          node
        ).toBeLessThan(1e-6);
    });

    if (hasNgspice)
      it(`${name} run now`, () => {
        const run = spawnSync('ngspice', ['-b', fileURLToPath(new URL(name, folder))], {
          encoding: 'utf8'
        });
        const live = readAnswers(run.stdout);
        expect(live.size).toBe(kept.size);
        for (const [node, expected] of kept)
          expect(
            Math.abs((live.get(node) ?? Number.NaN) - expected) / Math.abs(expected),
            node
          ).toBeLessThan(1e-6);
      });
  }
});
