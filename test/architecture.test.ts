// The one-way rule, proved by a walk over every import of the source: static, type-only and
// dynamic, inside .svelte files too. It counts what it saw, so that it cannot pass on nothing.
import { readdirSync, readFileSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rooms, roomOf, whyForbidden } from '../.config/rooms.js';

const filesBelow = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(ts|svelte)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name).replaceAll('\\', '/'));

const importsIn = (text: string): string[] => {
  const bare = text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '');
  const found: string[] = [];
  for (const match of bare.matchAll(
    /(?:^|[\s;{}])(?:import|export)\s[^'"()]*?from\s*['"]([^'"]+)['"]|(?:^|[\s;])import\s*['"]([^'"]+)['"]|import\(\s*(?:\/\*.*?\*\/\s*)?['"]([^'"]+)['"]\s*\)/g
  ))
    found.push(match[1] ?? match[2] ?? match[3] ?? '');
  return found;
};

const files = filesBelow('src');
const seen = files.map((file) => ({ file, imports: importsIn(readFileSync(file, 'utf8')) }));

describe('architecture', () => {
  it('sees the whole house', () => {
    const count = seen.reduce((sum, { imports }) => sum + imports.length, 0);
    expect(files.length).toBeGreaterThan(80);
    expect(count).toBeGreaterThan(200);
    for (const room of rooms)
      expect(
        files.some((file) => file.startsWith(`${room.path}/`)),
        room.name
      ).toBe(true);
  });

  it('finds every form of import', () => {
    const sample = [
      "import a from 'one';",
      "import type { B } from 'two';",
      "import {\n  c,\n  d\n} from 'three';",
      "export * from 'four';",
      "import 'five';",
      "const e = await import('six');",
      "// import no from 'not this';"
    ].join('\n');
    expect(importsIn(sample)).toEqual(['one', 'two', 'three', 'four', 'five', 'six']);
  });

  it('lets imports run up the list of rooms only', () => {
    const wrong = seen.flatMap(({ file, imports }) => {
      const room = roomOf(file);
      return room
        ? imports
            .map((specifier) => whyForbidden(room, specifier, file))
            .filter((why) => why !== undefined)
            .map((why) => `${file}: ${why}`)
        : [];
    });
    expect(wrong).toEqual([]);
  });

  it('keeps the order of the table one-way', () => {
    const order = rooms.map((room) => room.name);
    for (const room of rooms)
      for (const used of room.rooms)
        expect(order.indexOf(used), `${room.name} uses ${used}`).toBeLessThan(
          order.indexOf(room.name)
        );
  });

  it('has a README in every room', () => {
    for (const room of rooms)
      expect(existsSync(`${room.path}/README.md`), `${room.path}/README.md`).toBe(true);
  });
});
