// The cutting held against published problems, and against problems whose optimum is known because they
// were made by cutting whole lengths up.
import { readFileSync } from 'node:fs';
import {
  chanceFrom,
  cutPieces,
  lowerBound,
  type StockLength,
  type WantedPiece
} from '#plan/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

const toPieces = (lengths: readonly number[]): WantedPiece[] =>
  lengths.map((mm, at) => ({ id: `p${at}`, mm }));
const newLengths = (count: number, lengthMm: number): StockLength[] =>
  Array.from({ length: count }, (_, at) => ({ id: `s${at}`, lengthMm, kind: 'new length' }));

const cutEqual = (lengths: readonly number[], stockMm: number, rounds: number) => {
  const pieces = toPieces(lengths);
  const bound = lowerBound(pieces, stockMm);
  const cutting = cutPieces(pieces, newLengths(lengths.length, stockMm), {
    chance: chanceFrom(1),
    rounds,
    atLeast: bound
  });
  expect(cutting.unplaced).toEqual([]);
  const cut = cutting.cuts.flatMap((one) => one.pieces.map(({ id }) => id));
  expect([...cut].sort()).toEqual(pieces.map(({ id }) => id).sort());
  for (const { stock, pieces: own, leftMm } of cutting.cuts) {
    const used = own.reduce((sum, { mm }) => sum + mm, 0);
    expect(used + leftMm).toBeCloseTo(stock.lengthMm, 6);
  }
  return { used: cutting.cuts.length, bound };
};

const published = readFileSync(new URL('../reference/cutting.csv', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [name = '', stock, optimum, pieces = ''] = line.split(',');
    return {
      name,
      stockMm: Number(stock),
      optimum: Number(optimum),
      lengths: pieces.split(' ').map(Number)
    };
  });

// Falkenauer, Journal of Heuristics 2 (1996), class u120: see test/reference/README.md.
describe('120 pieces, published', () => {
  it('are twenty problems', () => {
    expect(published.map(({ lengths }) => lengths.length)).toEqual(Array(20).fill(120));
  });

  it.each(published)(
    '$name: at most one length above $optimum',
    ({ stockMm, optimum, lengths }) => {
      const { used, bound } = cutEqual(lengths, stockMm, 400);
      console.info(`bound ${bound}, optimum ${optimum}, cut ${used}`);
      expect(bound).toBeLessThanOrEqual(optimum);
      expect(used).toBeGreaterThanOrEqual(optimum);
      expect(used).toBeLessThanOrEqual(optimum + 1);
    }
  );
});

/** Lengths of 1000 mm, each cut into three: the optimum is their number. Same paper, class t. */
const triplets = (lengths: number, seed: number): number[] => {
  const chance = chanceFrom(seed);
  return Array.from({ length: lengths }, () => {
    const first = 380 + Math.floor(chance() * 110);
    const rest = 1000 - first;
    const second = 250 + Math.floor(chance() * (rest / 2 - 250));
    return [first, second, rest - second];
  }).flat();
};

describe('triplets that fill each length', () => {
  it.each([1, 2, 3])('120 pieces, seed %i: at most one above 40', (seed) => {
    const { used, bound } = cutEqual(triplets(40, seed), 1000, 400);
    console.info(`bound ${bound}, optimum 40, cut ${used}`);
    expect(bound).toBe(40);
    expect(used).toBeLessThanOrEqual(41);
  });

  it('501 pieces, seed 1: at most two above 167', { timeout: 60_000 }, () => {
    const { used, bound } = cutEqual(triplets(167, 1), 1000, 600);
    console.info(`bound ${bound}, optimum 167, cut ${used}`);
    expect(bound).toBe(167);
    expect(used).toBeLessThanOrEqual(169);
  });
});

describe('stock of several kinds', () => {
  const cut = (lengths: readonly number[], stock: readonly StockLength[]) =>
    cutPieces(toPieces(lengths), stock, { chance: chanceFrom(5), rounds: 60 });

  it('uses an offcut up before a spool is cut into', () => {
    const { cuts } = cut(
      [300, 190],
      [
        { id: 'spool', lengthMm: 10_000, kind: 'spool' },
        { id: 'offcut', lengthMm: 500, kind: 'offcut' }
      ]
    );
    expect(cuts.map(({ stock, leftMm }) => [stock.id, leftMm])).toEqual([['offcut', 10]]);
  });

  it('leaves an offcut alone that would become scrap', () => {
    const { cuts } = cut(
      [300],
      [
        { id: 'spool', lengthMm: 10_000, kind: 'spool' },
        { id: 'offcut', lengthMm: 440, kind: 'offcut' }
      ]
    );
    expect(cuts.map(({ stock }) => stock.id)).toEqual(['spool']);
  });

  it('says what it could not place', () => {
    const { cuts, unplaced } = cut([700, 400], [{ id: 'a', lengthMm: 500, kind: 'offcut' }]);
    expect(unplaced.map(({ mm }) => mm)).toEqual([700]);
    expect(cuts).toHaveLength(1);
  });

  it('stops when it is told to, with what it has', () => {
    let asked = 0;
    const pieces = toPieces(triplets(40, 9));
    const { unplaced } = cutPieces(pieces, newLengths(120, 1000), {
      chance: chanceFrom(1),
      rounds: 100_000,
      onProgress: () => ++asked < 2
    });
    expect(asked).toBe(2);
    expect(unplaced).toEqual([]);
  });

  it('never loses a piece, never cuts more than there is', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 25 });
    const stock = fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 0, max: 2000 }),
        kind: fc.constantFrom('spool', 'offcut', 'new length')
      }),
      { maxLength: 10 }
    );
    fc.assert(
      fc.property(lengths, stock, (wanted, given) => {
        const from = given.map((one, at) => ({ ...one, id: `s${at}` }) as StockLength);
        const { cuts, unplaced } = cut(wanted, from);
        const all = [...cuts.flatMap((one) => one.pieces), ...unplaced];
        expect(all.map(({ id }) => id).sort()).toEqual(
          toPieces(wanted)
            .map(({ id }) => id)
            .sort()
        );
        for (const { stock: own, pieces } of cuts)
          expect(pieces.reduce((sum, { mm }) => sum + mm, 0)).toBeLessThanOrEqual(
            own.lengthMm + 1e-6
          );
      }),
      { seed: 7, numRuns: 150 }
    );
  });
});
