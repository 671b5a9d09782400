// Oracle: poppler (pdftotext, pdftoppm, pdfinfo, pdffonts), which is not ours. Millimetres to pixels by
// 1 in = 25.4 mm exactly (international inch, 1959).
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { buildPictorial, layOnPaper, type DisplayList, type PaperWish } from '#drawing/index.ts';
import type { DisplayItem } from '#drawing/display-list.ts';
import { scaleInWords, toPdf, type PdfOptions } from '#drawing/paper/to-pdf.ts';
import { openDocument } from '#document/index.ts';
import { buildStudy } from '#study/index.ts';
import { radio } from '../../cli/run-cli.ts';
import { asFile, callTool, farthestFromGrey, paintPage } from '../../helpers/outside-tools.ts';

const loadFace: PdfOptions['loadFace'] = (file) => {
  const family = file.startsWith('ibm-plex-sans') ? 'ibm-plex-sans' : 'ibm-plex-mono';
  return Promise.resolve(
    new Uint8Array(readFileSync(`node_modules/@fontsource/${family}/files/${file}.woff`))
  );
};

const item = (id: string, style: string, shape: DisplayItem['shape']): DisplayItem => ({
  id,
  layer: 'wires',
  order: 1,
  style,
  shape
});
const listOf = (items: readonly DisplayItem[], width: number, height: number): DisplayList => ({
  items,
  bounds: { x: -5, y: -5, width: width + 10, height: height + 10 }
});

const write = async (
  list: DisplayList,
  wish: PaperWish,
  more: Partial<PdfOptions> = {}
): Promise<{ path: string; remarks: readonly string[]; bytes: Uint8Array }> => {
  const { bytes, remarks } = await toPdf(list, {
    theme: 'print',
    title: 'Bench set',
    plan: layOnPaper(list.bounds, wish),
    isToScale: true,
    caution: 'Lethal voltages',
    date: new Date(Date.UTC(2026, 0, 2)),
    loadFace,
    ...more
  });
  return { path: asFile(bytes, 'drawing.pdf'), remarks, bytes };
};

const trueSize: PaperWish = { paper: 'A4', scale: 1 };
const words = item('words', 'frame.text', {
  kind: 'text',
  x: 0,
  y: 20,
  text: 'R1 47 kΩ ±5 %, C1 0.05 µF, 85 °C, ≥1k, 1.5 MΩ, Ωμ, Łódź, Цепь',
  size: 4,
  anchor: 'start',
  face: 'sans'
});

describe('a PDF', () => {
  it('draws a line of 100 mm 100 mm long, at true size', async () => {
    const line = item('line', 'frame.line', { kind: 'line', points: [10, 30, 110, 30] });
    const { path } = await write(listOf([line], 150, 60), trueSize);
    const dotsPerInch = 600;
    const picture = paintPage(path, 1, dotsPerInch);
    const rows = Array.from({ length: picture.height }, (_, y) => {
      let [from, to, dark] = [-1, -1, 0];
      for (let x = 0; x < picture.width; x++)
        if (picture.at(x, y) < 128) {
          if (from < 0) from = x;
          to = x;
          dark++;
        }
      return { from, to, dark };
    });
    // The row of the line is the one with most ink above the margin's own rule of 100 mm.
    const own = rows.slice(0, Math.round(picture.height * 0.9));
    const best = own.reduce((most, row) => (row.dark > most.dark ? row : most));
    const mm = ((best.to - best.from + 1) / dotsPerInch) * 25.4;
    expect(Math.abs(mm - 100)).toBeLessThan(0.1);
    expect(best.dark).toBe(best.to - best.from + 1);
  });

  it('gives its text back, with ohm, micro, degree and what no face has', async () => {
    const { path, remarks } = await write(listOf([words], 160, 60), trueSize);
    const text = callTool('pdftotext', ['-layout', path, '-']).toString();
    // The ohm sign comes back as the Greek letter.
    expect(text).toContain('R1 47 kΩ ±5 %, C1 0.05 µF, 85 °C, ≥1k, 1.5 MΩ, Ωμ, Łódź, Цепь');
    expect(text).toContain('Bench set');
    expect(text).toContain('Lethal voltages');
    expect(remarks).toEqual([]);
    const fonts = callTool('pdffonts', [path]).toString().split('\n').slice(2).filter(Boolean);
    expect(fonts.length).toBeGreaterThan(1);
    for (const font of fonts) expect(font).toMatch(/IBMPlex.*CID TrueType.*yes yes yes/);
  });

  it('tells of letters that it could not draw, and keeps them to be found', async () => {
    const odd = item('odd', 'frame.text', { ...words.shape, text: '真空管 a' } as never);
    const { path, remarks } = await write(listOf([odd], 160, 60), trueSize);
    expect(remarks.join()).toContain('真');
    expect(callTool('pdftotext', [path, '-']).toString().replaceAll(/\s/g, '')).toContain('真空管');
  });

  it('is spread over sheets that say where they belong', async () => {
    const line = item('line', 'frame.line', { kind: 'line', points: [0, 0, 500, 600] });
    const { path } = await write(listOf([line], 500, 600), trueSize);
    const plan = layOnPaper(listOf([line], 500, 600).bounds, trueSize);
    const pages = Number(/Pages:\s+(\d+)/.exec(callTool('pdfinfo', [path]).toString())?.[1]);
    expect(pages).toBe(plan.columns * plan.rows);
    expect(callTool('pdftotext', ['-f', '2', '-l', '2', path, '-']).toString()).toContain(
      `sheet 2 of ${pages}`
    );
  });

  it('has the page that was asked for', async () => {
    for (const [paper, points] of [
      ['A4', /595\.\d+ x 841\.\d+|841\.\d+ x 595\.\d+/],
      ['letter', /612 x 792|792 x 612/],
      ['A1', /1683\.\d+ x 2383\.\d+|2383\.\d+ x 1683\.\d+/]
    ] as const) {
      const { path } = await write(listOf([words], 160, 60), { paper, scale: 'fit' });
      expect(callTool('pdfinfo', [path]).toString()).toMatch(points);
    }
  });

  it('is the same bytes for the same drawing and date', async () => {
    const once = await write(listOf([words], 160, 60), trueSize);
    const twice = await write(listOf([words], 160, 60), trueSize);
    expect(Buffer.compare(once.bytes, twice.bytes)).toBe(0);
  });

  it('in black has no colour, and in print it has', async () => {
    const opened = openDocument(readFileSync(radio, 'utf8'), 'radio');
    if (!opened.ok) throw new Error('the radio does not open');
    const study = buildStudy(opened.document);
    const list = buildPictorial(study, { findings: runChecks(study) });
    const wish: PaperWish = { paper: 'A4', scale: 'fit' };
    const black = await write(list, wish, { theme: 'black' });
    expect(farthestFromGrey(black.path, 1)).toBe(0);
    const print = await write(list, wish);
    expect(farthestFromGrey(print.path, 1)).toBeGreaterThan(60);
    const text = callTool('pdftotext', [black.path, '-']).toString();
    expect(text).toContain(opened.document.identity.title);
    expect(text).toMatch(/INSULATION CLASS NEEDED/);
    expect(text).toMatch(/Lethal voltages/);
  });

  it('holds pictures, once for all sheets', async () => {
    const bytes = new Uint8Array(
      Buffer.from(
        'iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAIAAAD91JpzAAAAFklEQVR4nGP4z8DAwMDA8J+BgYGBAQAcAwMB3rEP1wAAAABJRU5ErkJggg==',
        'base64'
      )
    );
    const photo = item('photo', 'photo.frame', {
      kind: 'picture',
      asset: { key: 'a', hash: 'a', straightening: null },
      matrix: [1, 0, 0, 1, 0, 0],
      width: 400,
      height: 100,
      opacity: 1,
      name: 'from below'
    });
    const without = await write(listOf([photo], 400, 100), trueSize);
    expect(without.remarks.join()).toMatch(/photo is not in this file/);
    const withIt = await write(listOf([photo], 400, 100), trueSize, {
      pictures: () => ({ bytes, type: 'image/png' })
    });
    expect(withIt.remarks).toEqual([]);
    const images = callTool('pdfimages', ['-list', withIt.path]).toString().split('\n').slice(2);
    const objects = images.filter(Boolean).map((line) => line.trim().split(/\s+/)[10]);
    expect(objects.length).toBeGreaterThan(1);
    expect(new Set(objects).size).toBe(1);
  });
});

it('a scale is said as it is read', () => {
  expect(scaleInWords(1)).toBe('1 : 1');
  expect(scaleInWords(0.5)).toBe('1 : 2');
  expect(scaleInWords(1 / 3)).toBe('1 : 3');
  expect(scaleInWords(2)).toBe('2 : 1');
});
