// Finds the examples in docstrings, `Example:  expression // value`, so that tests can run them.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface DocstringExample {
  readonly file: string;
  readonly expression: string;
  readonly expected: string;
}

/** Examples of all TypeScript files in a room, folders within it included. */
export function findExamples(room: string): DocstringExample[] {
  const names = readdirSync(room, { recursive: true, encoding: 'utf8' });
  return names
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .flatMap((name) => examplesIn(join(room, name)));
}

function examplesIn(file: string): DocstringExample[] {
  const lines = readFileSync(file, 'utf8').split('\n');
  return lines.flatMap((line) => {
    const match = /^\s*(?:\/\*\*|\*) +Example: +(.+) \/\/ (.+?)(?: \*\/)?$/.exec(line);
    return match ? [{ file, expression: match[1]!, expected: match[2]! }] : [];
  });
}

/** The value of an expression with the names of a module in scope. */
export function evaluateExample(expression: string, scope: Record<string, unknown>): unknown {
  const names = Object.keys(scope);
  const run = new Function(...names, `'use strict'; return (${expression});`);
  return run(...names.map((name) => scope[name]));
}
