// The JSON Schema that ships is the one that the program uses, and a validator that is not ours
// (ajv, JSON Schema draft 2020-12) judges documents by it as we do.
import { readFileSync } from 'node:fs';
import { documentSchema, saveDocument } from '#document/index.ts';
import { buildJsonSchemaText } from '#document/json-schema.ts';
import { isRecord } from '#document/plain-json.ts';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';

const shipped = readFileSync(new URL('../../static/chassis.schema.json', import.meta.url), 'utf8');
const isValid = new Ajv2020().compile(JSON.parse(shipped) as object);

/** Every place in a value, as the keys down to it. */
const pathsOf = (value: unknown, path: readonly string[] = []): string[][] =>
  typeof value === 'object' && value !== null
    ? [[...path], ...Object.entries(value).flatMap(([key, item]) => pathsOf(item, [...path, key]))]
    : [[...path]];

const spoiled = (document: unknown, path: readonly string[], value: unknown): unknown => {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const copy = Array.isArray(document) ? [...(document as unknown[])] : { ...(document as object) };
  const holder = copy as Record<string, unknown>;
  holder[key] = spoiled(holder[key], rest, value);
  if (holder[key] === undefined) Reflect.deleteProperty(holder, key);
  return copy;
};

/** What JSON Schema has no words for. */
const isBeyondJsonSchema = (issue: { code?: string; message: string }): boolean =>
  issue.code === 'custom' && /kept under|must rise/.test(issue.message);

describe('the JSON Schema', () => {
  it('is written from the schema (else run: node .config/write-schema.mjs)', () => {
    expect(shipped).toBe(buildJsonSchemaText());
  });

  it('takes every document', () => {
    fc.assert(
      fc.property(arbitraryDocument(4), (document) => {
        isValid(JSON.parse(saveDocument(document)));
        expect(isValid.errors ?? []).toEqual([]);
      }),
      { seed: 12, numRuns: 60 }
    );
  });

  it('takes and refuses a spoiled document as we do', () => {
    const value = fc.constantFrom<unknown>(
      undefined,
      null,
      3,
      -7,
      99.5,
      'x',
      '',
      'resistor',
      [],
      {}
    );
    let refused = 0;
    fc.assert(
      fc.property(arbitraryDocument(3), fc.nat(), value, (document, index, put) => {
        const paths = pathsOf(document);
        const bad = spoiled(document, paths[index % paths.length]!, put);
        const { error } = documentSchema.safeParse(bad);
        if (error?.issues.some(isBeyondJsonSchema) === true) return;
        if (error) refused++;
        expect(isRecord(bad) && isValid(bad)).toBe(error === undefined);
      }),
      { seed: 13, numRuns: 400 }
    );
    expect(refused).toBeGreaterThan(50);
  });
});
