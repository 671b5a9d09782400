// The commands that follow from a plan, on the built package.
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
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
      'tags.html',
      'schedule.xlsx'
    ]) {
      expect(existsSync(join(folder, name)), name).toBe(true);
      expect(statSync(join(folder, name)).size, name).toBeGreaterThan(1000);
    }
    expect(readFileSync(join(folder, 'schedule.xlsx')).subarray(0, 2).toString()).toBe('PK');
  });

  it('asks for a file for the workbook', () => {
    expect(cli('schedule', television, '--format', 'xlsx')).toMatchObject({ code: 2, out: '' });
  });
});
