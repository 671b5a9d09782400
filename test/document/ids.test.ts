// Ids and order keys: their form, and that a new key always fits.
import {
  idAlphabet,
  idLetters,
  idSchema,
  makeIdFrom,
  orderAt,
  orderAtEnd,
  orderBetween,
  orderSchema,
  ordersBetween,
  sortByOrder,
  type IdKind
} from '#document/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('ids', () => {
  it("are a letter and nine characters of Crockford's alphabet", () => {
    // D. Crockford, "Base 32": 32 symbols, without I, L, O and U.
    expect(idAlphabet).toHaveLength(32);
    expect(idAlphabet).not.toMatch(/[ilou]/);
    let turn = 0;
    const makeId = makeIdFrom(() => (turn++ % 32) / 32);
    expect(makeId('wire')).toBe('w012345678');
    expect(makeId('part')).toBe('p9abcdefgh');
    for (const kind of Object.keys(idLetters) as IdKind[]) {
      expect(idSchema.safeParse(makeIdFrom(() => 0.999999)(kind)).success).toBe(true);
    }
    expect(new Set(Object.values(idLetters)).size).toBe(Object.keys(idLetters).length);
  });
});

const anyKey = fc.oneof(
  fc.string({ minLength: 1, maxLength: 6 }),
  fc.constantFrom('a0', 'a1', 'Zz', '001')
);

describe('order keys', () => {
  it('sort by character code, equal ones by id', () => {
    const sorted = sortByOrder([
      { id: 'c', order: 'a1' },
      { id: 'b', order: 'a0' },
      { id: 'a', order: 'a1' },
      { id: 'd', order: 'Zz' }
    ]);
    expect(sorted.map(({ id }) => id)).toEqual(['d', 'b', 'a', 'c']);
  });

  it('fit between two others', () => {
    const key = orderBetween('a0', 'a1');
    expect(key > 'a0' && key < 'a1').toBe(true);
    const keys = ordersBetween('a0', 'a1', 5);
    expect(['a0', ...keys, 'a1']).toEqual(['a0', ...keys, 'a1'].sort());
    expect(new Set(keys).size).toBe(5);
  });

  it('come after the first where the two leave no room, whatever they are', () => {
    fc.assert(
      fc.property(anyKey, fc.option(anyKey), (before, after) => {
        const key = orderBetween(before, after);
        expect(key > before).toBe(true);
        expect(ordersBetween(before, after, 3)).toHaveLength(3);
      }),
      { seed: 1 }
    );
  });

  it('put a new element where it is wanted, after those that tie', () => {
    const list = sortByOrder([
      { id: 'a', order: 'a1' },
      { id: 'b', order: 'a1' },
      { id: 'c', order: 'a2' }
    ]);
    const place = (order: string) =>
      sortByOrder([...list, { id: 'new', order }]).findIndex(({ id }) => id === 'new');
    expect(place(orderAt(list, 0))).toBe(0);
    expect(place(orderAt(list, 1))).toBe(2);
    expect(place(orderAt(list, 2))).toBe(2);
    expect(place(orderAt(list, 3))).toBe(3);
    expect(place(orderAtEnd(list))).toBe(3);
    expect(orderAtEnd({})).toBe(orderBetween(null, null));
  });

  it('take a thousand insertions at one place', () => {
    let before = 'a0';
    for (let turn = 0; turn < 1000; turn++) before = orderBetween(before, 'a1');
    expect(before < 'a1').toBe(true);
    expect(orderSchema.safeParse(before).success).toBe(true);
  });
});
