// The commands that follow from a plan, on the built package.
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildSchedule, scheduleToCsv } from '#paperwork/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { cli, freshFolder, television } from './run-cli.ts';

describe('plan', () => {
  it('writes text, and json that other programs read', () => {
    const text = cli('plan', television);
    expect(text.code).toBe(0);
    expect(text.out).toMatch(/Cut list\n=+/);
    expect(text.out).toMatch(/No cutting does with fewer than \d+/);
    const json = JSON.parse(cli('plan', television, '--format', 'json').out) as {
      wires: unknown[];
    };
    expect(json.wires.length).toBeGreaterThan(100);
  });

  it('refuses an order that it does not know, in one line', () => {
    const run = cli('plan', television, '--order', 'any');
    expect(run).toMatchObject({ code: 2, out: '' });
    expect(run.said).toMatch(/--order any: choose one of one wire, one socket, bare chassis/);
  });
});

describe('tags and sheets', () => {
  it('are pages on stdout', () => {
    const tags = cli('tags', television, '--skip', '3');
    expect(tags.code).toBe(0);
    expect(tags.out.startsWith('<!doctype html>')).toBe(true);
    expect(tags.said).toMatch(/258 flags; print at 100 %/);
    expect(cli('sheets', television, '--only', 'leakage').out).toMatch(/Leakage of exposed metal/);
  });

  it('refuse labels that are not on the sheet', () => {
    expect(cli('tags', television, '--skip', '24')).toMatchObject({ code: 2, out: '' });
  });
});

describe('build --all', () => {
  it('writes everything into one folder', () => {
    const folder = freshFolder();
    const run = cli('build', television, '--out', folder, '--all');
    expect(run.code).toBe(0);
    for (const name of [
      'plan.html',
      'plan.json',
      'bench-list.html',
      'test-sheets.html',
      'page.html',
      'tags.html',
      'schedule.xlsx'
    ]) {
      expect(existsSync(join(folder, name)), name).toBe(true);
      expect(statSync(join(folder, name)).size, name).toBeGreaterThan(1000);
    }
    expect(readFileSync(join(folder, 'schedule.xlsx')).subarray(0, 2).toString()).toBe('PK');
  });

  it('takes a list of 300 wires to tags, lists, sheets and workbook in one line', () => {
    const folder = freshFolder();
    const list = join(folder, 'chassis-300.csv');
    const study = buildStudy(generateChassis(300, 3));
    writeFileSync(list, scheduleToCsv(buildSchedule(study, [])));
    const run = cli('build', list, '--out', folder, '--all');
    expect(run.code, run.said).toBe(0);
    expect(run.said).toMatch(/: 300 wires;/);
    const text = (name: string) => readFileSync(join(folder, name), 'utf8');
    expect(text('page.html')).toContain('Content-Security-Policy');
    expect(text('tags.html').match(/class="flag"/g)).toHaveLength(600);
    const { wires } = JSON.parse(text('plan.json')) as { wires: unknown[] };
    expect(wires).toHaveLength(300);
    expect(text('bench-list.html')).toContain('Bench list');
    for (const title of ['Continuity', 'Insulation', 'Leakage', 'First power-up'])
      expect(text('test-sheets.html')).toMatch(new RegExp(`<h1>${title}`));
    expect(text('cut-list.csv')).toMatch(/^\uFEFFCut from,Where,/);
    // Nothing is on the shelf of a list: all that is to be done is bought.
    expect(text('shopping-list.csv').split('\r\n').length).toBeGreaterThan(3);
    expect(readFileSync(join(folder, 'schedule.xlsx')).subarray(0, 2).toString()).toBe('PK');
  });

  it('asks for a file for the workbook', () => {
    expect(cli('schedule', television, '--format', 'xlsx')).toMatchObject({ code: 2, out: '' });
  });
});
