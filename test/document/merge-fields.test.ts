// Merging fields, against the cases of the standard; joining two sets of them, and leaving out patches that
// are written over, against doing everything one after the other.
import type { ChassisDocument, Patch } from '#document/index.ts';
import { applyPatches } from '#document/index.ts';
import { compactPatches } from '#document/compact-patches.ts';
import { joinFields, mergeFields } from '#document/merge-fields.ts';
import type { JsonRecord } from '#document/plain-json.ts';
import fc from 'fast-check';
import { create } from 'mutative';
import { describe, expect, it } from 'vitest';

const merged = (target: object, fields: object): object => {
  const copy = structuredClone(target) as JsonRecord;
  mergeFields(copy, fields as JsonRecord);
  return copy;
};

describe('merging', () => {
  // RFC 7396, appendix A: the rows whose target and patch are objects.
  it.each([
    ['{"a":"b"}', '{"a":"c"}', '{"a":"c"}'],
    ['{"a":"b"}', '{"b":"c"}', '{"a":"b","b":"c"}'],
    ['{"a":"b"}', '{"a":null}', '{}'],
    ['{"a":"b","b":"c"}', '{"a":null}', '{"b":"c"}'],
    ['{"a":["b"]}', '{"a":"c"}', '{"a":"c"}'],
    ['{"a":"c"}', '{"a":["b"]}', '{"a":["b"]}'],
    ['{"a":{"b":"c"}}', '{"a":{"b":"d","c":null}}', '{"a":{"b":"d"}}'],
    ['{"a":[{"b":"c"}]}', '{"a":[1]}', '{"a":[1]}'],
    ['{"e":null}', '{"a":1}', '{"e":null,"a":1}'],
    ['{}', '{"a":{"bb":{"ccc":null}}}', '{"a":{"bb":{}}}']
  ])('%s with %s is %s (RFC 7396, appendix A)', (target, patch, result) => {
    const value = merged(JSON.parse(target) as object, JSON.parse(patch) as object);
    expect(value).toEqual(JSON.parse(result));
  });
});

const key = fc.constantFrom('a', 'b');
const leaf = fc.constantFrom(null, 0, 'x', ['x'], {});
const fieldsOf = (depth: number): fc.Arbitrary<object> =>
  fc.dictionary(key, depth === 0 ? leaf : fc.oneof(leaf, fieldsOf(depth - 1)), {
    noNullPrototype: true
  });

describe('joining two sets of fields', () => {
  it('does what the two do one after the other, or is not possible', () => {
    let possible = 0;
    fc.assert(
      fc.property(fieldsOf(2), fieldsOf(2), fieldsOf(2), (target, first, second) => {
        const joined = joinFields(first as JsonRecord, second as JsonRecord);
        if (!joined) return;
        possible++;
        const start = merged({}, target);
        expect(merged(start, joined)).toEqual(merged(merged(start, first), second));
      }),
      { seed: 10, numRuns: 1000 }
    );
    expect(possible).toBeGreaterThan(400);
  });
});

describe('leaving out patches that are written over', () => {
  it('has the same effect as all of them', () => {
    let shorter = 0;
    fc.assert(
      fc.property(fieldsOf(2), fc.array(fieldsOf(2), { maxLength: 8 }), (target, sets) => {
        const start = merged({}, target);
        let current = start;
        const patches: Patch[] = [];
        for (const fields of sets) {
          const [next, more] = create(
            current,
            (draft) => mergeFields(draft as JsonRecord, fields as JsonRecord),
            { enablePatches: true }
          );
          current = next;
          patches.push(...(more as Patch[]));
        }
        const compact = compactPatches(patches);
        if (compact.length < patches.length) shorter++;
        expect(applyPatches(start as ChassisDocument, compact)).toEqual(current);
      }),
      { seed: 11, numRuns: 1000 }
    );
    expect(shorter).toBeGreaterThan(200);
  });
});
