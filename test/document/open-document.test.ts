// Opening and saving: bad input gives one clear list and nothing half-loaded; what is saved opens again.
import { readFileSync } from 'node:fs';
import {
  documentVersion,
  migrations,
  formatProblem,
  openDocument,
  problemLimit,
  saveDocument,
  type ChassisDocument,
  type Migration
} from '#document/index.ts';
import { findJsonFaults } from '#document/scan-json.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { chassis } from '../helpers/chassis.ts';

const small = (): ChassisDocument =>
  chassis('Bench set')
    .tube('V1', '6CG7')
    .resistor('R1', '47k', 'V1-1', null)
    .wire(12, 'V1-5', null, { awg: 22 })
    .build();
const text = saveDocument(small());

const problemsOf = (bad: string, steps?: readonly Migration[]): string[] => {
  const opened = openDocument(bad, 'set.chassis.json', steps);
  return opened.ok ? [] : opened.problems.map(formatProblem);
};
/** The small document's text with other values at some paths; undefined takes one away. */
const changed = (values: Readonly<Record<string, unknown>>): string => {
  const document = JSON.parse(text) as Record<string, unknown>;
  for (const [path, value] of Object.entries(values)) {
    const keys = path.split('.');
    const last = keys.pop()!;
    const holder = keys.reduce((at, key) => at[key] as Record<string, unknown>, document);
    holder[last] = value;
  }
  return JSON.stringify(document);
};

describe('a file that is no document', () => {
  it.each([
    ['', 'line 1, column 1: the file is empty'],
    ['{', 'line 1, column 2: the text ends too early'],
    ['{\n "a": 1,\n}', 'line 2, column 8: a comma stands before the closing bracket'],
    ["{'a': 1}", 'line 1, column 2: single quotes stand here: write double quotes'],
    ['{"a": 1 // x\n}', 'a comment stands here'],
    ['{"a": NaN}', '"NaN" stands here: write a value'],
    ['{"a": 1} x', 'line 1, column 10: more text follows after the end'],
    ['{"a": 1e999}', 'a (line 1, column 7): is a number without bounds'],
    ['{"a": "x', 'a text is not closed'],
    ['{"a": "x\ny"}', 'a line or tab stands inside a text'],
    ['{"a": "\\q"}', 'a backslash stands here: write it twice'],
    ['{"a": 1, "a": 2}', 'a (line 1, column 10): occurs twice in one object'],
    [
      '{"a": {"__proto__": 1}}',
      'a.__proto__ (line 1, column 8): is a key that is refused everywhere'
    ],
    ['{"a": {"\\u005f_proto__": 1}}', 'is a key that is refused everywhere'],
    ['{"constructor": 1}', 'is a key that is refused everywhere'],
    ['{"a": [{"prototype": 1}]}', 'a.0.prototype (line 1, column 9)'],
    ['['.repeat(40), 'deeper than 32 levels'],
    ['['.repeat(1_000_000), 'deeper than 32 levels'],
    ['3', 'is not a chassis document: its "format" is not "underchassis"'],
    ['[]', 'choose a *.chassis.json file'],
    ['{"format": "underchassis"}', 'version: is missing, where a whole number from 1 is expected'],
    ['{"format": "underchassis", "version": "1"}', 'version: is "1"'],
    ['{"format": "underchassis", "version": 0.5}', 'version: is 0.5'],
    ['{"format": "underchassis", "version": 1}', 'id: is missing: add text in quotes']
  ])('%j says where and what', (bad, words) => {
    expect(problemsOf(bad).join('\n')).toContain(words);
  });

  it('names the file, the place, the mistake and the way out', () => {
    const bad = changed({
      'wires.w12.found.awg': '20 AWG',
      'wires.w12.from.known': 'sen',
      'parts.pr1.elements.eresistora.ohms': undefined
    });
    expect(problemsOf(bad)).toEqual(
      expect.arrayContaining([
        'set.chassis.json: wires -> wire "12" -> found.awg: is text ("20 AWG"), where a number is expected: write a number, without quotes or unit',
        'set.chassis.json: wires -> wire "12" -> from.known: is text ("sen"): write one of "seen", "metered", "inferred", "unknown"',
        'set.chassis.json: parts -> part "R1" -> element "eresistora" -> ohms: is missing: add a number'
      ])
    );
    const twice = changed({ 'wires.w13': small().wires['w12'] });
    expect(problemsOf(twice)).toEqual([
      'set.chassis.json: wires -> wire "12" -> id: is "w12", but the element is kept under "w13"; the two must be equal: change it so that this holds'
    ]);
  });

  it('caps the list and counts the rest', () => {
    const numbers = Array.from({ length: 50 }, (_, index) => [`wires.w${100 + index}`, 3]);
    const bad = changed(Object.fromEntries(numbers) as Record<string, number>);
    const problems = problemsOf(bad);
    expect(problems).toHaveLength(problemLimit + 1);
    expect(problems.at(-1)).toContain('and 30 more');
  });

  it('never throws, whatever is cut out of or put into the text', () => {
    const cut = fc.tuple(fc.nat(text.length), fc.nat(12), fc.string({ maxLength: 4 }));
    fc.assert(
      fc.property(cut, ([at, length, put]) => {
        const opened = openDocument(text.slice(0, at) + put + text.slice(at + length), 'x');
        if (!opened.ok) expect(opened.problems.length).toBeGreaterThan(0);
      }),
      { seed: 2, numRuns: 500 }
    );
  });
});

describe('the scan before parsing', () => {
  it('finds text sound exactly where JSON.parse does (keys that occur twice aside)', () => {
    const sign = fc.constantFrom(...'{}[],:"\\ 01.-+eEtruefalsn/\nu00e9ab');
    const noise = fc.array(sign, { maxLength: 12 }).map((signs) => signs.join(''));
    const cutJson = fc
      .tuple(fc.json({ maxDepth: 3 }), fc.nat(40), fc.nat(2), noise)
      .map(([json, at, length, put]) =>
        json.length > at ? json.slice(0, at) + put.slice(0, 2) + json.slice(at + length) : json
      );
    fc.assert(
      fc.property(fc.oneof(noise, fc.json(), cutJson), (json) => {
        const grammar = findJsonFaults(json).filter(
          ({ wrong }) => !/twice|refused|without bounds/.test(wrong)
        );
        let parses = true;
        try {
          JSON.parse(json);
        } catch {
          parses = false;
        }
        expect(grammar.length === 0).toBe(parses);
      }),
      { seed: 3, numRuns: 5000 }
    );
  });
});

describe('a document of another version', () => {
  const later = changed({ version: documentVersion + 1, benches: { x1: { name: 'red 22' } } });

  it('that is newer opens to be read, keeps its version and what only it knows', () => {
    const opened = openDocument(later, 'x');
    expect(opened).toMatchObject({ ok: true, newerVersion: documentVersion + 1 });
    if (opened.ok) expect(JSON.parse(saveDocument(opened.document))).toEqual(JSON.parse(later));
  });

  it('that is newer and cannot be read says so once', () => {
    const bad = changed({ version: documentVersion + 1, wires: [], parts: [] });
    const problems = problemsOf(bad);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/version 3.*version 2.*a newer version of this program/);
  });

  it('of version 1, as that version wrote it, opens with all that it held', () => {
    const saved = readFileSync(new URL('versions/radio-1.chassis.json', import.meta.url), 'utf8');
    const opened = openDocument(saved, 'radio-1.chassis.json');
    const nothing = { photos: {}, patterns: {}, callouts: {}, shelf: {} };
    expect(opened).toMatchObject({ ok: true, migratedFrom: 1 });
    if (!opened.ok) return;
    expect(JSON.parse(saveDocument(opened.document))).toEqual({
      ...(JSON.parse(saved) as object),
      ...nothing,
      version: documentVersion
    });
  });

  it('of version 1 keeps what stood under a key that has a meaning since', () => {
    const one = changed({ version: 1, shelf: { x1: { name: 'red 22' } } });
    const opened = openDocument(one, 'x');
    expect(opened).toMatchObject({
      ok: true,
      document: { shelf: {}, 'shelf of version 1': { x1: { name: 'red 22' } } }
    });
  });

  // An invented version 0 called the title "name" and had no policy.
  const fromZero: Migration = {
    from: 0,
    schema: z.looseObject({ version: z.literal(0), name: z.string().min(1) }),
    migrate: ({ name, ...rest }) => ({ ...rest, identity: { title: name }, policy: {} })
  };
  const older = changed({
    version: 0,
    name: 'Old set',
    unknownThen: { kept: true },
    identity: undefined,
    policy: undefined
  });

  it('that is older is migrated, and unknown keys come along', () => {
    const opened = openDocument(older, 'x', [fromZero, ...migrations]);
    expect(opened).toMatchObject({
      ok: true,
      migratedFrom: 0,
      document: {
        version: documentVersion,
        identity: { title: 'Old set' },
        unknownThen: { kept: true }
      }
    });
  });

  it('that is older is held to the schema of its own time', () => {
    const bad = older.replace('"Old set"', '""');
    expect(problemsOf(bad, [fromZero, ...migrations])).toEqual([
      'set.chassis.json: name: is empty; the least is 1 characters: give at least 1 characters'
    ]);
    expect(problemsOf(older)[0]).toContain('version: is 0');
  });
});

describe('saving', () => {
  it('writes known keys in the order of the schema and unknown ones after them by their letters', () => {
    const shuffled = JSON.parse(
      '{"zebra": 1, "state": "found", "planned": {}, "found": {"x": {"b": 1, "a": 2}, "awg": 22}, "alpha": 2, "carries": {}, "construction": "bus", "to": {"known": "seen"}, "from": {"as": "x", "known": "seen"}, "number": "1", "order": "a", "id": "w1"}'
    );
    const wires = { w1: shuffled } as unknown as ChassisDocument['wires'];
    const saved = saveDocument({ ...small(), wires });
    expect(saved).toContain('"found": { "awg": 22, "x": { "a": 2, "b": 1 } }');
    const keys = [...saved.slice(saved.indexOf('"w1"')).matchAll(/^ {3}"(\w+)"/gm)].map(
      (m) => m[1]
    );
    expect(keys).toEqual(
      'id order number from to construction carries found planned state alpha zebra'.split(' ')
    );
  });

  it('ends with a line end, and begins each element on a line of its own', () => {
    expect(text.endsWith('}\n')).toBe(true);
    expect(text).toMatch(/^ {2}"w12": \{$/m);
    expect(text.split('\n').every((line) => line.length <= 140)).toBe(true);
  });

  it('refuses what JSON would turn into something else', () => {
    const document = small();
    document.wires['w12']!.found.awg = NaN;
    expect(() => saveDocument(document)).toThrow('NaN');
    const poisoned = { ...small(), ...(JSON.parse('{"constructor": {}}') as object) };
    expect(() => saveDocument(poisoned)).toThrow('"constructor"');
  });

  it('opens a file with a byte order mark', () => {
    expect(openDocument(`\uFEFF${text}`, 'x').ok).toBe(true);
  });
});
