// File names that every system takes.
import { documentEnding, fileNameOf } from '#storage/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

describe('a file name', () => {
  it.each([
    ['Bench set 21"', 'bench-set-21.chassis.json'],
    ['  ', 'chassis.chassis.json'],
    ['Приёмник №5', 'приёмник-5.chassis.json'],
    ['../../etc/passwd', 'etc-passwd.chassis.json'],
    ['CON', 'con-chassis.chassis.json'],
    ['con', 'con-chassis.chassis.json']
  ])('of %j is %s', (title, name) => {
    expect(fileNameOf(title, documentEnding)).toBe(name);
  });

  it('holds nothing that a file system refuses', () => {
    // Characters that Windows refuses in names: Microsoft, "Naming Files, Paths, and Namespaces".
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (title) => {
        const name = fileNameOf(title, '.svg');
        // eslint-disable-next-line no-control-regex -- that is what is looked for
        expect(name).not.toMatch(/[<>:"/\\|?*\u0000-\u001f\s]/);
        expect(name).toMatch(/^[^.]+\.svg$/);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(255);
      }),
      { seed: 14 }
    );
  });
});
