// What the command line writes, opened by programs that are not ours: poppler for PDF, librsvg for SVG.
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { callTool, paintPage } from '../helpers/outside-tools.ts';
import { cli, freshFolder, radio, television } from './run-cli.ts';

describe('draw, as PDF', () => {
  it('writes the diagram on one sheet of the paper that was named', () => {
    const out = join(freshFolder(), 'radio.pdf');
    const run = cli('draw', radio, '--out', out, '--paper', 'A2');
    expect(run.code).toBe(0);
    expect(run.said).toMatch(/1 sheet of A2/);
    const about = callTool('pdfinfo', [out]).toString();
    expect(about).toMatch(/Title:\s+Five-tube table set/);
    expect(about).toMatch(/Pages:\s+1\b/);
    const text = callTool('pdftotext', [out, '-']).toString();
    for (const word of ['V1', '12BE6', 'Lethal voltages', 'not known', 'traced by'])
      expect(text).toContain(word);
  });

  it('writes the drawing to scale over as many sheets as true size takes', () => {
    const out = join(freshFolder(), 'board.pdf');
    const words = ['--view', 'pictorial', '--scale', '1:1', '--paper', 'A3', '--theme', 'black'];
    const run = cli('draw', television, ...words, '--out', out);
    expect(run.code).toBe(0);
    const pages = Number(/Pages:\s+(\d+)/.exec(callTool('pdfinfo', [out]).toString())?.[1]);
    expect(pages).toBeGreaterThan(4);
    const text = callTool('pdftotext', ['-f', '2', '-l', '2', out, '-']).toString();
    expect(text).toContain(`sheet 2 of ${pages}`);
    expect(text).toContain('scale 1 : 1');
    // The rule in the margin of the first sheet is 100 mm long (1 in = 25.4 mm exactly).
    const dotsPerInch = 300;
    const page = paintPage(out, 1, dotsPerInch);
    const toPx = (mm: number) => Math.round((mm / 25.4) * dotsPerInch);
    const row = page.height - toPx(10 - 5);
    let [from, to] = [-1, -1];
    for (let x = toPx(20); x < page.width - toPx(12); x++)
      if ([-1, 0, 1].some((step) => page.at(x, row + step) < 128)) {
        if (from < 0 && x > page.width - toPx(125)) from = x;
        to = x;
      }
    expect((Math.abs(to - from + 1) / dotsPerInch) * 25.4).toBeCloseTo(100, 0);
  });

  it('draws only what was picked', () => {
    const out = join(freshFolder(), 'v1.pdf');
    expect(cli('draw', radio, '--of', 'V1', '--out', out).code).toBe(0);
    const text = callTool('pdftotext', [out, '-']).toString();
    expect(text).toContain('A piece of the drawing: V1');
    expect(text).toContain('12BE6');
    expect(text).not.toContain('35W4');
    const svg = cli('draw', radio, '--of', 'V1').out;
    callTool('rsvg-convert', ['--format', 'png', '--width', '400'], Buffer.from(svg));
  });

  it('says what it cannot do, and the way out', () => {
    expect(cli('draw', radio, '--of', 'V99').said).toMatch(/--of V99: the diagram shows nothing/);
    expect(cli('draw', radio, '--format', 'pdf').said).toMatch(/--out is missing/);
    expect(cli('draw', radio, '--out', 'x.png').said).toMatch(/PNG needs a browser/);
    const far = cli('draw', radio, '--scale', '90:1', '--out', join(freshFolder(), 'x.pdf'));
    expect(far.said).toMatch(/the most is 150: choose larger paper or a smaller scale/);
    expect(far.code).toBe(2);
    expect(cli('draw', radio, '--scale', 'big', '--out', 'x.pdf').said).toMatch(
      /give fit, or paper/
    );
  });

  it('stays a file of a size that can be sent', () => {
    const out = join(freshFolder(), 'tv.pdf');
    expect(cli('draw', television, '--out', out, '--paper', 'A1').code).toBe(0);
    expect(statSync(out).size).toBeLessThan(300_000);
  });
});

describe('compare', () => {
  it('says in words and on a drawing what differs', () => {
    const folder = freshFolder();
    const [changed, drawing] = [join(folder, 'changed.chassis.json'), join(folder, 'marked.svg')];
    const document = JSON.parse(readFileSync(radio, 'utf8')) as {
      wires: Record<string, { number: string; found: { awg?: number } }>;
    };
    const [first, second] = Object.values(document.wires);
    const [id] = Object.keys(document.wires).slice(1);
    first!.found.awg = 14;
    Reflect.deleteProperty(document.wires, id ?? '');
    writeFileSync(changed, JSON.stringify(document));
    const run = cli('compare', radio, changed, '--drawing', drawing);
    expect(run.code).toBe(0);
    expect(run.out).toContain(`wire ${second?.number} removed`);
    expect(run.out).toMatch(new RegExp(`wire ${first?.number} changed: gauge: 14 AWG instead of`));
    expect(run.out.trimEnd().split('\n')).toHaveLength(2);
    expect(run.said).toMatch(/1 removed, 1 changed/);
    const svg = readFileSync(drawing, 'utf8');
    expect(svg).toContain('changed (1)');
    callTool('rsvg-convert', ['--format', 'png', '--width', '400', drawing]);
    expect(cli('compare', radio, radio).out).toBe('');
    expect(cli('compare', radio).said).toMatch(/give two documents/);
  });
});

describe('page', () => {
  it('writes the television in less than 350 kB, and the page opens again', () => {
    const out = join(freshFolder(), 'television.html');
    expect(cli('page', television, '--out', out).code).toBe(0);
    expect(statSync(out).size).toBeLessThan(350_000);
    const page = readFileSync(out, 'utf8');
    for (const name of ['Diagram', 'To scale, from below'])
      expect(page).toContain(`data-name="${name}"`);
    const said = cli('compare', television, out);
    // What is left out of a shared copy is the shelf.
    expect(said.out.split('\n').filter((line) => !/stock|^$/.test(line))).toEqual([]);
    expect(said.said).toMatch(/second was made from the first/);
    const whole = join(freshFolder(), 'whole.html');
    const all = ['--with-shelf', '--with-prices', '--with-private-notes'];
    expect(cli('page', television, ...all, '--out', whole).code).toBe(0);
    expect(cli('compare', television, whole).out).toBe('');
  });
});
