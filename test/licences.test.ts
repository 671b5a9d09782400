// Everything that ships is listed with its licence, in the version that ships.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface LockedPackage {
  readonly version?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly license?: string;
  readonly hasInstallScript?: boolean;
}

const read = (path: string): string => readFileSync(new URL(`../${path}`, import.meta.url), 'utf8');
const { packages } = JSON.parse(read('package-lock.json')) as {
  packages: Readonly<Record<string, LockedPackage>>;
};
const nameOf = (path: string): string => path.split('node_modules/').at(-1) ?? '';
const locked = Object.entries(packages).filter(([path]) => path !== '');
/** "elkjs 0.12.1", and what is said of it. */
const listed = new Map(
  [...read('static/third-party.txt').matchAll(/^- (\S+ \d\S*): (.+)$/gm)].map(
    ([, name = '', words = '']) => [name, words]
  )
);

describe('what ships', () => {
  it('is listed with its version and its licence', () => {
    const ships = locked.filter(([, { dev, optional }]) => dev !== true && optional !== true);
    expect(ships.length).toBeGreaterThan(20);
    const missing = ships
      .map(([path, { version, license }]) => ({ name: `${nameOf(path)} ${version}`, license }))
      .filter(({ name, license = '' }) => listed.get(name)?.includes(license) !== true);
    expect(missing).toEqual([]);
  });

  it('is listed in the version that is installed, and nothing that is gone', () => {
    const installed = new Set(locked.map(([path, { version }]) => `${nameOf(path)} ${version}`));
    expect([...listed.keys()].filter((name) => !installed.has(name))).toEqual([]);
  });

  it('runs nothing on installing', () => {
    const scripts = locked.filter(
      ([, { hasInstallScript, dev }]) => hasInstallScript === true && dev !== true
    );
    expect(scripts.map(([path]) => nameOf(path))).toEqual([]);
  });
});
