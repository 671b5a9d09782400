// Compares a text with the one that was looked at and found good. A mismatch leaves the new text beside
// it as `-changed`; setting UPDATE_GOLDEN=1 takes it over, which is done by hand after looking.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { expect } from 'vitest';

export const expectGolden = (file: URL, text: string): void => {
  const changed = new URL(file.href.replace(/(\.[^.]+)$/, '-changed$1'));
  const known = existsSync(file) ? readFileSync(file, 'utf8') : null;
  if (known === text) {
    rmSync(changed, { force: true });
    return;
  }
  if (process.env['UPDATE_GOLDEN'] === '1') {
    writeFileSync(file, text);
    return;
  }
  if (process.env['CI'] === undefined) writeFileSync(changed, text);
  expect(text, `differs from ${file.pathname}; look at ${changed.pathname}`).toBe(known);
};
