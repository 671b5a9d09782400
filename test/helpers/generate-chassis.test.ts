// The generator makes documents that the schema takes, with as many wires as asked for.
import { documentSchema } from '#document/index.ts';
import { describe, expect, it } from 'vitest';
import { generateChassis, seeded } from './generate-chassis.ts';

describe('a generated chassis', () => {
  for (const wires of [100, 300, 1000]) {
    it(`has ${wires} wires and passes the schema`, () => {
      for (const seed of [1, 2, 3]) {
        const document = generateChassis(wires, seed);
        expect(Object.keys(document.wires)).toHaveLength(wires);
        const again = documentSchema.safeParse(JSON.parse(JSON.stringify(document)));
        expect(again.success).toBe(true);
      }
    });
  }

  it('is the same for the same seed, and another for another', () => {
    const text = JSON.stringify(generateChassis(100, 7));
    expect(JSON.stringify(generateChassis(100, 7))).toBe(text);
    expect(JSON.stringify(generateChassis(100, 8))).not.toBe(text);
  });

  it('takes its chance from 0 up to 1', () => {
    const chance = seeded(1);
    const values = Array.from({ length: 1000 }, chance);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...values)).toBeLessThan(1);
    expect(new Set(values).size).toBeGreaterThan(990);
  });
});
