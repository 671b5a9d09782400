// The command line on the built package: a wire list in, a judged drawing and a schedule out.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildChassisZip } from '#storage/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { cli, freshFolder, radio, television, televisionList } from './run-cli.ts';

interface Row {
  number: string;
  [field: string]: unknown;
}
const rowsOf = (text: string): Row[] => (JSON.parse(text) as { rows: Row[] }).rows;

beforeAll(() => {
  // The first call may have to build; what the build says must not reach stdout.
  const first = cli('sum', 'wire-size', 'awg=22', '--json');
  expect(first.code).toBe(0);
  expect(first.out.startsWith('{')).toBe(true);
}, 180_000);

describe('options', () => {
  it.each([
    [
      ['check', television, '--jsn'],
      /check has no option --jsn: it has --json, --fail-on, --explain/
    ],
    [['check', television, '-j'], /check has no option -j: it has /],
    [['check', television, '--fail-on'], /--fail-on needs a value: --fail-on SEVERITY/],
    [['check', television, '--fail-on', '--json'], /--fail-on needs a value/],
    [['check', television, '--json=yes'], /--json takes no value, but was given "yes"/]
  ])('%j is refused in our own words', (words, says) => {
    const run = cli(...words);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.said).toMatch(says);
    expect(run.said).toContain('check --help');
    expect(run.said).not.toMatch(/positional|Unknown option|ambiguous/);
  });

  it('a list that is judged as it is says that it knows less', () => {
    expect(cli('check', televisionList).said).toContain('a list holds wires alone');
    expect(cli('check', television).said).not.toContain('a list holds wires alone');
  });
});

describe('import', () => {
  it('names the columns that nothing is read from', () => {
    const list = join(freshFolder(), 'odd.csv');
    writeFileSync(list, 'No,Starts,Whither,Fate\n1,V3-5,TS2-1,x\n');
    const run = cli('import', list, '--out', join(freshFolder(), 'odd.chassis.json'));
    expect(run.said).toContain('columns kept as text: "Whither", "Fate"');
    expect(run.said).toContain('give its column a heading such as To');
  });

  it('reads a list that a restorer kept, says what it could not read, and keeps all of it', () => {
    const folder = freshFolder();
    const out = join(folder, 'bench.chassis.json');
    const run = cli('import', 'test/cli/lists/notebook.csv', '--out', out);
    expect(run.code).toBe(0);
    expect(run.out).toBe('');
    expect(run.said).toMatch(/row 13, DC Volts: "abc"/);
    const rows = rowsOf(cli('schedule', out, '--format', 'json').out);
    expect(rows.map((row) => row.number)).toEqual(
      Array.from({ length: 12 }, (_, index) => String(index + 1))
    );
    const [first, second, third] = rows;
    expect(first).toMatchObject({ from: 'T1 green', to: 'V1-4', colour: 'brown', foundAwg: 20 });
    // 7 1/2 in x 25.4 mm/in exactly (international inch, 1959).
    expect(first?.['lengthMm']).toBeCloseTo(190.5, 9);
    expect(second?.['lengthMm']).toBeCloseTo(139.7, 9);
    expect(second?.['amps']).toBeCloseTo(2.4, 9);
    // A ground lug of its own, at 0 V.
    expect(third?.['to']).toMatch(/^chassis/);
    expect(third?.['dcV']).toBe(0);
    // 2.5 kV of margin over 16 kV: common practice, no source.
    expect(rows[8]).toMatchObject({ dcV: 16_000, classV: 20_000, preferredV: 25_000 });
    expect(rows[9]).toMatchObject({ classV: null, stressV: null });
    expect(rows[10]?.['notes']).toMatch(/abc/);
    expect(rows[9]?.['findings']).toContain('end-unknown');
  });

  it('refuses a list without a wire, in one line', () => {
    const run = cli(
      'import',
      'test/cli/lists/no-wires.csv',
      '--out',
      join(freshFolder(), 'x.json')
    );
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.said.trimEnd().split('\n').pop()).toMatch(/no-wires\.csv: .*heading/);
  });
});

describe('schedule', () => {
  it('gives every row all fields, numbers or null', () => {
    const run = cli('schedule', television, '--format', 'json');
    expect(run.code).toBe(0);
    const rows = rowsOf(run.out);
    expect(rows.length).toBeGreaterThanOrEqual(90);
    const words = ['number', 'from', 'to', 'function', 'cable', 'net', 'colour', 'tracer'];
    const numbers =
      'dcV acV pulseV amps stressV classV preferredV awg foundAwg plannedAwg ratingV lengthMm cutMm stripAMm stripBMm'.split(
        ' '
      );
    for (const row of rows) {
      for (const name of [...words, 'stressBasis', 'endA', 'endB', 'sleeve', 'route', 'state'])
        expect(row[name] === null || typeof row[name] === 'string', `${row.number} ${name}`).toBe(
          true
        );
      for (const name of numbers)
        expect(row[name] === null || Number.isFinite(row[name]), `${row.number} ${name}`).toBe(
          true
        );
      expect(Array.isArray(row['findings'])).toBe(true);
    }
    for (const name of numbers)
      expect(
        rows.some((row) => row[name] !== null),
        name
      ).toBe(true);
  });

  it('writes CSV that a spreadsheet opens, and not a formula in it', () => {
    const run = cli('schedule', television);
    expect(run.out.startsWith('\uFEFFNo,From,To')).toBe(true);
    expect(run.out).not.toMatch(/(^|,)"?[=+@]/m);
  });
});

describe('check', () => {
  it('answers with findings and counts, and fails on a danger', () => {
    const run = cli('check', television, '--json');
    expect(run.code).toBe(1);
    const { findings, counts } = JSON.parse(run.out) as {
      findings: Record<string, unknown>[];
      counts: Record<string, number>;
    };
    for (const finding of findings)
      expect(Object.keys(finding)).toEqual(
        expect.arrayContaining(['rule', 'severity', 'at', 'message', 'source', 'fix'])
      );
    for (const severity of ['danger', 'fault', 'caution', 'note'])
      expect(counts[severity]).toBe(
        findings.filter((finding) => finding['severity'] === severity).length
      );
    expect(cli('check', television, '--fail-on', 'never').code).toBe(0);
  });

  it('explains a rule', () => {
    const run = cli('check', '--explain', 'class-found');
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/times the margin/);
    expect(cli('check', '--explain', 'nonsense').code).toBe(2);
  });
});

describe('draw', () => {
  it('writes a drawing that carries the document and opens again', () => {
    const folder = freshFolder();
    const svg = join(folder, 'radio.svg');
    expect(cli('draw', radio, '--view', 'diagram', '--out', svg).code).toBe(0);
    const text = readFileSync(svg, 'utf8');
    expect(text).toMatch(/^<\?xml[^>]*\?>\s*<svg/);
    expect(text).not.toMatch(/<script|onload=|javascript:/i);
    const again = cli('schedule', svg, '--format', 'json');
    expect(again.code).toBe(0);
    expect(JSON.parse(again.out)).toEqual(
      JSON.parse(cli('schedule', radio, '--format', 'json').out)
    );
  });

  it('stops at its time limit and says so', () => {
    const run = cli('draw', television, '--time-limit', '0.001');
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.said).toMatch(/console-21\.chassis\.json: not drawn: /);
  });
});

describe('build', () => {
  it('goes from a spreadsheet to drawing, schedule and findings', () => {
    const folder = join(freshFolder(), 'deep', 'er');
    const run = cli('build', televisionList, '--out', folder);
    expect(run.code).toBe(0);
    expect(readdirSync(folder).sort()).toEqual([
      'diagram.svg',
      'document.chassis.json',
      'findings.json',
      'findings.txt',
      'schedule.csv',
      'schedule.json'
    ]);
    const listed = rowsOf(readFileSync(join(folder, 'schedule.json'), 'utf8'));
    const original = rowsOf(cli('schedule', television, '--format', 'json').out);
    expect(listed.map((row) => row.number)).toEqual(original.map((row) => row.number));
    // Ends on the chassis come back as lugs of their own, to be named later.
    const named = (end: unknown): boolean => /^[A-Z]+\d+\b/.test(String(end));
    listed.forEach((row, index) => {
      for (const end of ['from', 'to'])
        if (named(row[end])) expect(row[end]).toBe(original[index]?.[end]);
    });
    expect(listed.filter((row) => named(row['from']) && named(row['to'])).length).toBeGreaterThan(
      80
    );
  });
});

describe('bad input', () => {
  it.each([
    [['check', '/nowhere/x.chassis.json'], /x\.chassis\.json: there is no such file: /],
    [['frobnicate'], /there is no command "frobnicate": choose one of import/],
    [
      ['draw', television, '--theme', 'pink'],
      /--theme pink: choose one of print, black, light, dark/
    ],
    [['schedule', television, '--format', 'xls'], /--format xls: choose one of csv, json/],
    [['schedule'], /DOC is missing: use schedule/],
    [['check', television, '--what'], /--what/],
    [['sum', 'wire-size', 'awg=-99'], /sum wire-size: awg: /],
    [['sum', 'wire-size', 'gauge=22'], /sum wire-size: gauge: /],
    [['sum', 'wire-size', '22'], /"22" is not NAME=VALUE/]
  ])('%j ends with 2 and one line', (words, line) => {
    const run = cli(...words);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.said.trimEnd().split('\n')).toHaveLength(1);
    expect(run.said).toMatch(line);
  });

  it('names the place in a broken document, and loads none of it', () => {
    const broken = JSON.parse(readFileSync(radio, 'utf8')) as {
      wires: Record<string, { found: { awg?: unknown } }>;
    };
    const [wire] = Object.values(broken.wires);
    if (wire) wire.found.awg = 'thick';
    const path = join(freshFolder(), 'broken.chassis.json');
    writeFileSync(path, JSON.stringify(broken));
    const run = cli('schedule', path);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.said).toMatch(/broken\.chassis\.json: .*awg/);
  });
});

describe('a zip', () => {
  const zips = 'test/storage/zips';
  it('is read as the chassis in it', () => {
    const run = cli('schedule', `${zips}/by-info-zip.chassis.zip`, '--format', 'json');
    expect(run.code).toBe(0);
    expect(rowsOf(run.out)).toEqual([]);
  });

  it('of many chassis is refused with their names', () => {
    const path = join(freshFolder(), 'all.chassis.zip');
    const [first, second] = [chassis('First').build(), chassis('Second').build()];
    writeFileSync(path, buildChassisZip([first, second], new Map()));
    const run = cli('check', path);
    expect(run.code).toBe(2);
    expect(run.said).toContain('it holds 2 chassis (first.chassis.json, second.chassis.json)');
  });
});
