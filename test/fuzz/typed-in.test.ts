// Texts put in by hand: pasted blocks of cells and the words of a command line, damaged by seed. A paste is
// taken or told cell by cell and can be undone; a call ends with an exit code and one line.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { makeIdFrom, saveDocument } from '#document/index.ts';
import { DocumentState } from '#editor/core/document-state.svelte.ts';
import { Preferences } from '#editor/core/preferences.svelte.ts';
import { readOwnCells } from '#editor/schedule/cell-block.ts';
import { lateCellText } from '#editor/schedule/late-cell-text.ts';
import { newRow } from '#editor/schedule/cell-access.ts';
import { ScheduleState } from '#editor/schedule/schedule-state.svelte.ts';
import { chassis } from '../helpers/chassis.ts';
import { seeded } from '../helpers/generate-chassis.ts';
import { checkOpened, checkPrototypes, checkWords } from './judge.ts';
import { hostileTexts, mutateText, pickFrom, type Chance } from './mutate.ts';
import { documentTexts } from './seeds.ts';

afterEach(checkPrototypes);

const bench = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .tube('V1', '6CG7', { at: [60, 60] })
  .strip('TS1', 5, { at: [120, 60] })
  .wire(12, 'V1-1', 'TS1-2', { colour: 'red', dcV: 285 })
  .wire(13, 'V1-6', 'TS1-4', { colour: 'blue' })
  .build();

const blocks = [
  'No\tFrom\tTo\tColour\n14\tV1-3\tTS1-1\tgreen/white\n15\tV1-8\tchassis\tblack\n',
  '14\tV1-3\tTS1-1\tgreen/white\t22\t285 V dc, 5 kV pulse, 0.2 A\n15\t?\tV9-1\t\t\t18kV dc\n',
  'red\nblue\n\ngreen\n',
  '"a ""quoted"" cell"\t600 V\n"two\nlines"\t7 1/2 in\n'
];

beforeAll(() => lateCellText.load());

describe('pasted cells', () => {
  it('are taken or told why not, and undone in one step', () => {
    const columns = ['number', 'from', 'colour', 'carries', 'state', 'length'];
    let taken = 0;
    for (let turn = 0; turn < 1500; turn++) {
      const chance = seeded(700_000 + turn);
      const text = mutateText(pickFrom(blocks, chance), hostileTexts, chance);
      const documents = new DocumentState(bench, () => turn * 5000);
      const told: string[] = [];
      const schedule = new ScheduleState({
        documents,
        preferences: new Preferences(null),
        makeId: makeIdFrom(chance),
        tell: (words) => told.push(words),
        pickWire: () => undefined,
        showList: () => undefined
      });
      schedule.goTo(
        pickFrom([newRow, ...Object.keys(bench.wires)], chance),
        pickFrom(columns, chance)
      );
      const before = saveDocument(documents.document);
      const own = chance() < 0.2 ? readOwnCells(JSON.stringify([[text, text]])) : null;
      if (own) schedule.cells.pasteCells(own);
      else schedule.cells.paste(text);
      for (const words of told) checkWords(words, text);
      checkOpened(documents.document, text.length);
      if (saveDocument(documents.document) === before) continue;
      taken += 1;
      documents.undo();
      expect(saveDocument(documents.document)).toBe(before);
    }
    expect(taken).toBeGreaterThan(500);
  }, 600_000);
});

/** Sound calls, whose words are then changed. */
const calls: readonly (readonly string[])[] = [
  ['import', 'list.csv', '--out', 'new.chassis.json'],
  ['check', 'd0.chassis.json'],
  ['check', 'd1.chassis.json', '--fail-on', 'note', '--json'],
  ['check', '--explain', 'class-found'],
  ['schedule', 'list.csv', '--format', 'csv'],
  ['schedule', 'd2.chassis.json', '--format', 'xlsx', '--out', 'new.xlsx'],
  ['plan', 'd3.chassis.json'],
  ['tags', 'list.csv', '--out', 'tags.html'],
  ['sheets', 'd4.chassis.json', '--out', 'new'],
  ['sum', 'wire-size', 'awg=22'],
  ['sum', 'bundle', 'diameters=2mm,2mm,1.5mm'],
  ['sum', 'discharge', 'capacitance=100uF', 'resistance=1M', 'from=300', 'to=60', '--json'],
  ['sum', 'stress', 'dc=18kV', 'pulse=5kV'],
  ['help']
];
const words = [
  'd5.chassis.json',
  'missing.csv',
  '--fail-on=danger',
  '--format=json',
  '--view=pictorial',
  '--all',
  '--help',
  '--nonsense',
  '-x',
  '--',
  '=',
  'awg=',
  'awg=1e999',
  'dc=-1',
  ...hostileTexts
];

/** One or two words of a sound call taken out, put in, replaced or damaged. */
const mutateCall = (call: readonly string[], chance: Chance): string[] => {
  const changed = [...call];
  for (let turns = 1 + Math.floor(chance() * 2); turns > 0; turns--) {
    // The command itself seldom: behind it lies more to try.
    const first = chance() < 0.1 ? 0 : 1;
    const at = first + Math.floor(chance() * (changed.length - first));
    const way = chance();
    if (way < 0.2) changed.splice(at, 1);
    else if (way < 0.5) changed.splice(at + 1, 0, pickFrom(words, chance));
    else if (way < 0.7) changed[at] = pickFrom(words, chance);
    else changed[at] = mutateText(changed[at] ?? '', hostileTexts, chance);
  }
  return changed;
};

/** What is written must stay in this test's own folder. */
const staysHere = (word: string): boolean => !/\.\.|^(?:--\w+=)?(?:\/|[A-Z]:)/.test(word);

describe('a call of the command line', () => {
  it('ends with an exit code, and bad input with one line', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'chassis-fuzz-'));
    const here = process.cwd();
    process.chdir(folder);
    try {
      for (const [index, text] of documentTexts.slice(0, 6).entries())
        writeFileSync(`d${index}.chassis.json`, text);
      writeFileSync('list.csv', 'No,From,To\n1,V1-1,TS1-2\n');
      const codes = new Map<number, number>();
      for (let turn = 0; turn < 1000; turn++) {
        const chance = seeded(800_000 + turn);
        const call = mutateCall(pickFrom(calls, chance), chance).filter(staysHere);
        const said: string[] = [];
        const code = await run(call, { out: () => undefined, say: (line) => said.push(line) });
        codes.set(code, (codes.get(code) ?? 0) + 1);
        const given = call.join(' ');
        if (code !== 0 && code !== 1 && code !== 2)
          throw new Error(`${JSON.stringify(call)}: exit code ${code}: ${said.join('\n')}`);
        const last = said.at(-1) ?? '';
        if (code === 2 && call.length > 0) {
          expect(last, given).toMatch(/^underchassis: /);
          expect(last, given).not.toContain('\n');
          checkWords(last, given);
        }
      }
      expect(codes.get(0) ?? 0).toBeGreaterThan(100);
      expect(codes.get(2) ?? 0).toBeGreaterThan(100);
    } finally {
      process.chdir(here);
      rmSync(folder, { recursive: true, force: true });
    }
  }, 600_000);
});
