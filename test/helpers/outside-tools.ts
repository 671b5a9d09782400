// Programs that are not ours, to open what comes out of this one. test/run.mjs installs them as Debian packages.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const packages: Readonly<Record<string, string>> = {
  pdftotext: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  pdfinfo: 'poppler-utils',
  pdffonts: 'poppler-utils',
  'rsvg-convert': 'librsvg2-bin',
  unzip: 'unzip',
  python3: 'python3-minimal'
};

/** What a program says on a call; its stdout as bytes. Fails the test where it is missing or fails. */
export const callTool = (name: string, words: readonly string[], input?: Uint8Array): Buffer => {
  const run = spawnSync(name, words, { input, maxBuffer: 256 * 1024 * 1024 });
  if (run.error)
    throw new Error(`${name} is missing: sudo apt-get install ${packages[name] ?? name}`);
  if (run.status !== 0) throw new Error(`${name} ${words.join(' ')}: ${run.stderr.toString()}`);
  return run.stdout;
};

/** Bytes as a file in a folder of its own; its path. */
export const asFile = (bytes: Uint8Array | string, name: string): string => {
  const path = join(mkdtempSync(join(tmpdir(), 'output-')), name);
  writeFileSync(path, bytes);
  return path;
};

export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  /** 0 is black, 255 white. */
  readonly at: (x: number, y: number) => number;
}

const readNetpbm = (bytes: Buffer, magic: 'P5' | 'P6') => {
  const head = /^(P\d)\s+(\d+)\s+(\d+)\s+(\d+)\s/.exec(bytes.subarray(0, 64).toString('latin1'));
  if (head?.[1] !== magic) throw new Error(`no ${magic} picture`);
  return {
    width: Number(head[2]),
    height: Number(head[3]),
    pixels: bytes.subarray(head[0].length)
  };
};

/** A page of a PDF as poppler paints it. */
export const paintPage = (pdf: string, page: number, dotsPerInch: number): GreyPicture => {
  const words = ['-r', `${dotsPerInch}`, '-f', `${page}`, '-l', `${page}`, '-gray', '-singlefile'];
  const out = pdf.replace(/\.pdf$/, `-${page}`);
  callTool('pdftoppm', [...words, pdf, out]);
  const { width, height, pixels } = readNetpbm(readFileSync(`${out}.pgm`), 'P5');
  return { width, height, at: (x, y) => pixels[y * width + x] ?? 255 };
};

/** How far the colours of a page's pixels are from grey at most, 0 to 255. */
export const farthestFromGrey = (pdf: string, page: number): number => {
  const out = pdf.replace(/\.pdf$/, `-${page}-colour`);
  callTool('pdftoppm', ['-r', '60', '-f', `${page}`, '-l', `${page}`, '-singlefile', pdf, out]);
  const { pixels } = readNetpbm(readFileSync(`${out}.ppm`), 'P6');
  let most = 0;
  for (let at = 0; at + 2 < pixels.length; at += 3) {
    const [r = 0, g = 0, b = 0] = pixels.subarray(at, at + 3);
    most = Math.max(most, Math.max(r, g, b) - Math.min(r, g, b));
  }
  return most;
};
