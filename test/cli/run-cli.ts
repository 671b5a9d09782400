// Runs the command line as a user does, on the built package.
import { spawnSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface CliRun {
  readonly code: number | null;
  readonly out: string;
  readonly said: string;
}

/** One call of the command line, with a limit of two minutes. */
export const cli = (...words: string[]): CliRun => {
  const run = spawnSync(process.execPath, ['.config/cli.mjs', ...words], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    timeout: 120_000
  });
  return { code: run.status, out: run.stdout, said: run.stderr };
};

/** A folder of this run's own. */
export const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'chassis-'));

export const television = 'static/demonstrations/console-21.chassis.json';
export const televisionList = 'static/demonstrations/console-21.csv';
export const radio = 'static/demonstrations/five-tube-radio.chassis.json';
