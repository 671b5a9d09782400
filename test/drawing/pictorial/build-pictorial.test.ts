// The pictorial as a whole: nothing silently missing, everything at its true place, numbers readable.
import { runChecks } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import type { DisplayItem, DisplayList } from '#drawing/display-list.ts';
import { buildPictorial, type PictorialOptions } from '#drawing/pictorial/build-pictorial.ts';
import { layPictorial } from '#drawing/pictorial/pictorial-geometry.ts';
import { lineLength } from '#drawing/pictorial/smooth.ts';
import { styleNames } from '#drawing/styles.ts';
import { buildStudy, findTerminalPlace, type Study } from '#study/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildRadio } from '../../demonstrations/radio.ts';
import { buildTelevision } from '../../demonstrations/television.ts';
import { arbitraryDocument } from '../../helpers/arbitrary-document.ts';
import { chassis } from '../../helpers/chassis.ts';
import { generateChassis } from '../../helpers/generate-chassis.ts';

type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

const draw = (document: ChassisDocument, options: Partial<PictorialOptions> = {}) => {
  const study = buildStudy(document);
  return { study, list: buildPictorial(study, { findings: runChecks(study), ...options }) };
};

const textsOf = ({ items }: DisplayList): string =>
  items.map(({ shape }) => (shape.kind === 'text' ? shape.text : '')).join(' ');

const centreOf = ({ shape }: DisplayItem): { x: number; y: number } =>
  shape.kind === 'circle'
    ? { x: shape.x, y: shape.y }
    : shape.kind === 'box'
      ? { x: shape.x + shape.width / 2, y: shape.y + shape.height / 2 }
      : { x: NaN, y: NaN };

/** The wires that are drawn, and the numbers of those that the sheet lists as not drawn. */
const accountFor = (study: Study, list: DisplayList) => {
  const ids = new Set(list.items.map(({ id }) => id));
  const listed = list.items
    .filter(({ id }) => id.startsWith('not-drawn-'))
    .map(({ shape }) => (shape.kind === 'text' ? shape.text : ''))
    .join(' ');
  return study.index.wires.map((wire) => ({
    wire,
    drawn: ids.has(`wire-${wire.id}`),
    numbered: ids.has(`number-${wire.id}-1-0`),
    listed: wire.number !== '' && listed.split(/[;\s]+/).includes(wire.number)
  }));
};

/** Parts in every state: placed, hanging, without a place; wires with ends found, open and lost. */
const mixed = () =>
  chassis('Mixed')
    .unit('Main', { size: [200, 120], place: [0, 0] })
    .support('K1', 'clamp', [80, 60])
    .support('G1', 'grommet', [150, 20], { boreMm: 8 })
    .tube('V1', '6CG7', { at: [40, 40] })
    .tube('V2', '6AU6A')
    .strip('TS1', 5, { at: [120, 60], rotation: 90, grounded: [3] })
    .ground('GL1', { at: [20, 100] })
    .resistor('R1', '47k', 'V1-1', 'TS1-2')
    .resistor('R2', '1k', 'V2-1', 'TS1-4')
    .capacitor('C1', '40 uF', 'TS1-4', null)
    .unit('Side')
    .tube('V9', '5U4GB', { at: [30, 30], rotation: 45 })
    .unit('Nowhere')
    .tube('V7', '12AX7')
    .strip('TS7', 3)
    .wire(1, 'V1-3', 'TS1-1', { dcV: 285, route: ['K1'] })
    .wire(2, 'V1-4', 'V2-3', { acV: 6.3 })
    .wire(4, 'V1-6', null)
    .wire(5, null, null)
    .wire(6, 'TS1-5', 'V9-2', { dcV: 1200, outsideMm: 100 })
    .wire(7, 'V7-1', 'V7-2')
    .wire(9, 'C1 B', 'GL1')
    .wire(10, 'V1-9', 'V1-9')
    .wire(11, 'TS1-2', null, { route: ['K1', 'G1'] });

describe('every wire is drawn or named', () => {
  it.each([
    ['the radio', buildRadio()],
    ['the television', buildTelevision()]
  ])('%s: all are drawn and numbered', (_, document) => {
    const { study, list } = draw(document);
    const all = accountFor(study, list);
    expect(all.length).toBeGreaterThan(40);
    expect(all.filter(({ drawn, numbered }) => !drawn || !numbered)).toEqual([]);
    expect(textsOf(list)).not.toContain('not placed');
  });

  it('a set in every state: stubs where an end is open or lost, the rest in the list', () => {
    const { study, list } = draw(mixed().build());
    const all = accountFor(study, list);
    expect(all.filter(({ drawn }) => drawn).map(({ wire }) => wire.number)).toEqual([
      '1',
      '2',
      '4',
      '6',
      '9',
      '10',
      '11'
    ]);
    expect(all.filter(({ listed }) => listed).map(({ wire }) => wire.number)).toEqual([
      '2',
      '5',
      '7'
    ]);
    expect(textsOf(list)).toContain('to V2-3');
    expect(textsOf(list)).toContain('Main: not placed');
    expect(textsOf(list)).toContain('Nowhere: not placed');
    const rings = list.items.filter(
      ({ style, layer }) => style === 'free.ring' && layer !== 'frame'
    );
    expect(rings).toHaveLength(2);
  });

  it('a wire list without any place: all parts in trays, all wires in the list', () => {
    const { study, list } = draw(generateChassis(90));
    for (const { wire, drawn, listed } of accountFor(study, list)) {
      expect(drawn || listed, `wire ${wire.number}`).toBe(true);
    }
    const known = new Set(list.items.flatMap(({ subject }) => subject?.id ?? []));
    for (const { id, reference } of study.index.parts) expect(known.has(id), reference).toBe(true);
  });

  it('any document at all (seed 1956)', () => {
    fc.assert(
      fc.property(arbitraryDocument(), (document) => {
        const study = buildStudy(document);
        const { lines, notDrawn } = layPictorial(study, 'below');
        const whole = lines.filter(({ way }) => way.loose?.why !== 'no place').length;
        expect(whole + notDrawn.length).toBe(study.index.wires.length);
        const list = buildPictorial(study, { findings: [] });
        for (const { shape } of list.items) {
          const numbers = Object.values(shape)
            .flat()
            .filter((value) => typeof value === 'number');
          expect(numbers.every(Number.isFinite)).toBe(true);
        }
        const ids = list.items.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { seed: 1956, numRuns: 30 }
    );
  });
});

describe('true to scale', () => {
  const television = buildTelevision();
  const study = buildStudy(television);
  const below = layPictorial(study, 'below');
  const above = layPictorial(study, 'above');

  it('puts every terminal where its unit, its part and its offset say', () => {
    let seen = 0;
    for (const { key, part, terminal } of study.index.terminals) {
      const place = findTerminalPlace(part, terminal);
      const corner = television.units[part.unit]?.place;
      if (!place || !corner || !terminal.offset) continue;
      const spot = below.spots.get(key)!.at;
      expect(spot.x).toBeCloseTo(corner.x + place.x, 9);
      expect(spot.y).toBeCloseTo(corner.y + place.y, 9);
      seen++;
    }
    expect(seen).toBeGreaterThan(200);
  });

  it('draws each terminal around that place', () => {
    const list = buildPictorial(study, { findings: [] });
    for (const pin of ['1', '2', '3', '4', '5', '6', '7']) {
      const part = study.index.parts.find(({ reference }) => reference === 'V3')!;
      const terminal = Object.values(part.terminals).find(({ name }) => name === pin)!;
      const key = `${part.id}/${terminal.id}`;
      const ring = list.items.find(
        ({ subject, shape }) => subject?.id === key && shape.kind === 'circle'
      )!;
      const { x, y } = below.spots.get(key)!.at;
      expect(centreOf(ring).x).toBeCloseTo(x, 3);
      expect(centreOf(ring).y).toBeCloseTo(y, 3);
    }
  });

  it('trades right and left seen from above, and nothing else', () => {
    expect([...above.spots.keys()]).toEqual([...below.spots.keys()]);
    for (const [key, { at }] of below.spots) {
      const part = study.index.partById.get(key.split('/')[0]!)!;
      if (!part.place) continue;
      const other = above.spots.get(key)!.at;
      expect(other.x).toBeCloseTo(-at.x, 9);
      expect(other.y).toBeCloseTo(at.y, 9);
    }
  });

  // Pins count clockwise from the key or the gap, seen from below: the convention of every published
  // basing diagram. From above they count the other way.
  it.each([
    ['below', 1],
    ['above', -1]
  ] as const)('counts pins the right way round seen from %s', (face, way) => {
    const { parts } = (face === 'below' ? below : above).places;
    let seen = 0;
    for (const placed of parts.values()) {
      if (placed.look !== 'socket') continue;
      const degrees = placed.terminals
        .filter(({ name }) => /^\d+$/.test(name))
        .map(({ id }) => placed.spots.get(id)!)
        .map(({ x, y }) => Math.atan2(y - placed.pose.at.y, x - placed.pose.at.x));
      degrees.slice(1).forEach((angle, n) => {
        const turn = Math.atan2(Math.sin(angle - degrees[n]!), Math.cos(angle - degrees[n]!));
        expect(turn * way).toBeGreaterThan(0);
        seen++;
      });
    }
    expect(seen).toBeGreaterThan(80);
  });

  it('turns a part clockwise as seen from below', () => {
    const turned = chassis()
      .unit('Main', { size: [200, 200], place: [0, 0] })
      .strip('TS1', 2, { at: [100, 100], rotation: 90, pitchMm: 20 })
      .build();
    const { spots } = layPictorial(buildStudy(turned), 'below');
    expect(spots.get('pts1/t1')!.at.y).toBeCloseTo(90, 9);
    expect(spots.get('pts1/t2')!.at.y).toBeCloseTo(110, 9);
  });

  it('draws wires about as long as they are reckoned from the same places', () => {
    const untaped = {
      ...television,
      wires: Object.fromEntries(
        Object.entries(television.wires).map(([id, { tapedMm: _, ...wire }]) => [id, wire])
      )
    };
    const plain = buildStudy(untaped);
    let seen = 0;
    for (const { wire, line, way } of layPictorial(plain, 'below').lines) {
      const length = plain.wires.get(wire)?.length;
      const ends = [
        plain.index.findAt(plain.document.wires[wire]!.from),
        plain.index.findAt(plain.document.wires[wire]!.to)
      ];
      if (!length || way.loose || way.jacket || ends[0]?.part.unit !== ends[1]?.part.unit) continue;
      // The reckoning goes straight, the drawing round the parts and through its lanes.
      expect(lineLength(line), plain.document.wires[wire]!.number).toBeGreaterThan(
        length.mm * 0.9 - 6
      );
      seen++;
    }
    expect(seen).toBeGreaterThan(50);
  });
});

const boxesOf = ({ items }: DisplayList, test: (item: DisplayItem) => boolean): Box[] =>
  items.flatMap(({ shape, ...item }) =>
    shape.kind === 'box' && test({ shape, ...item }) ? [shape] : []
  );

const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** A made-up chassis with every part on a grid, far more crowded than a real one. */
const crowded = (wires: number, seed: number): ChassisDocument => {
  const document = structuredClone(generateChassis(wires, seed));
  const counts = new Map<string, number>();
  for (const part of Object.values(document.parts)) {
    if (Object.values(part.terminals).some(({ on }) => on)) continue;
    const n = counts.get(part.unit) ?? 0;
    counts.set(part.unit, n + 1);
    part.place = { x: 40 + (n % 8) * 55, y: 40 + Math.floor(n / 8) * 60, by: 'hand' };
  }
  return document;
};

describe('readable', () => {
  it.each([
    ['the radio', buildRadio(), 0],
    ['the television', buildTelevision(), 0],
    ['a crowd of 150 wires', crowded(150, 2), 4]
  ])('%s: no number on another, none over a ring', (_, document, most) => {
    const { list } = draw(document);
    const numbers = boxesOf(
      list,
      ({ id, style }) => id.startsWith('number-') && style.endsWith('.box')
    );
    expect(numbers.length).toBeGreaterThan(40);
    numbers.forEach((box, index) => {
      for (const other of numbers.slice(index + 1)) expect(overlap(box, other)).toBe(false);
    });
    const rings = list.items.filter(
      ({ layer, shape }) => layer === 'terminals' && shape.kind === 'circle'
    );
    const covered = rings.filter((ring) => {
      const { x, y } = centreOf(ring);
      return numbers.some((box) => overlap(box, { x: x - 0.5, y: y - 0.5, width: 1, height: 1 }));
    });
    expect(covered.length, covered.map(({ title }) => title).join(', ')).toBeLessThanOrEqual(most);
  });

  it.each([
    ['the radio', buildRadio(), 0],
    ['the television', buildTelevision(), 0]
  ])('%s: wires go round the parts', (_, document, most) => {
    const { places, lines } = layPictorial(buildStudy(document), 'below');
    const through: string[] = [];
    for (const placed of places.parts.values()) {
      if (placed.outline.kind !== 'circle' || placed.look === 'mark') continue;
      const own = new Set([...placed.spots.values()]);
      for (const { wire, line } of lines) {
        const ends = [line[0]!, line.at(-1)!];
        const isOwn = ends.some((end) =>
          [...own].some(({ x, y }) => Math.hypot(x - end.x, y - end.y) < 1)
        );
        if (isOwn) continue;
        const near = line.some(
          ({ x, y }) =>
            Math.hypot(x - placed.pose.at.x, y - placed.pose.at.y) <
            (placed.outline as { r: number }).r - 1
        );
        if (near) through.push(`${document.wires[wire]!.number} through ${placed.part.reference}`);
      }
    }
    expect(through.length, through.join(', ')).toBeLessThanOrEqual(most);
  });

  it('shows lengths when asked, and only then', () => {
    const radio = buildRadio();
    const { list } = draw(radio, { withLengths: true });
    expect(textsOf(list)).toContain('600 · 125 mm');
    expect(textsOf(draw(radio).list)).not.toContain(' · 125 mm');
  });
});

describe('the display list', () => {
  const radio = buildRadio();
  const { study, list } = draw(radio);

  it('is the same twice, with unique ids, known styles, and a title for whatever has a subject', () => {
    expect(draw(radio).list).toEqual(list);
    const ids = list.items.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const known = new Set(styleNames);
    for (const { id, style, subject, title } of list.items) {
      expect(known.has(style), `${id}: ${style}`).toBe(true);
      if (subject) expect(title, id).toMatch(/\S/);
    }
  });

  it('keeps the ids of what did not change when a part moves', () => {
    const moved = structuredClone(radio);
    moved.parts['pv1']!.place!.x += 3;
    const before = new Set(
      list.items.map(({ id }) => id).filter((id) => !/-gap-|^number-.*-2-/.test(id))
    );
    const after = new Set(draw(moved).list.items.map(({ id }) => id));
    for (const { id } of study.index.wires) expect(after.has(`wire-${id}`)).toBe(true);
    const lost = [...before].filter((id) => !after.has(id));
    expect(lost.length).toBeLessThan(before.size * 0.02);
  });

  it('says what each thing is', () => {
    const titleOf = (kind: string, id: string): string | undefined =>
      list.items.find(({ subject }) => subject?.kind === kind && subject.id === id)?.title;
    expect(titleOf('part', 'pv1')).toBe('V1 12BE6, converter');
    expect(titleOf('terminal', 'pv1/t5')).toBe('V1-5');
    expect(titleOf('support', 'sk1')).toBe('clamp K1');
    expect(titleOf('unit', 'uchassis')).toBe('Chassis');
    expect(titleOf('wire', 'w13')).toMatch(/^Wire 13, V5-7 to TS1-3, needs 600 V/);
  });

  it('holds the radio: parts, leads, wires, classes', () => {
    const count = (test: (item: DisplayItem) => boolean): number => list.items.filter(test).length;
    expect(count(({ style }) => style === 'part.socket')).toBe(5);
    expect(count(({ id }) => /^wire-w\w+$/.test(id))).toBe(Object.keys(radio.wires).length);
    expect(count(({ style }) => style === 'support.bore')).toBe(2 + 1);
    const bodies = study.index.parts.filter(({ terminals }) =>
      Object.values(terminals).every(({ on }) => on)
    );
    expect(bodies.length).toBeGreaterThan(10);
    for (const { id } of bodies) {
      const leads = list.items.filter(
        ({ style, subject }) => style === 'lead' && subject?.id.startsWith(`${id}/`)
      );
      expect(leads.length).toBe(Object.keys(study.index.partById.get(id)!.terminals).length);
    }
    expect(textsOf(list)).toContain('Pictorial, seen from below');
    expect(textsOf(draw(radio, { face: 'above' }).list)).toContain('Pictorial, seen from above');
  });

  it('paints in layers, and leaves the foot away when asked', () => {
    const bare = draw(radio, { withFoot: false }).list;
    expect(bare.items[0]?.layer).toBe('paper');
    expect(bare.items.some(({ layer }) => layer === 'frame')).toBe(false);
    expect(bare.bounds.height).toBeLessThan(list.bounds.height);
  });

  it('numbers the marks as the findings are numbered, beside what they are about', () => {
    const findings = runChecks(study);
    const marked = findings.flatMap(({ severity }, index) =>
      severity === 'danger' || severity === 'fault' ? [index] : []
    );
    const marks = list.items.filter(({ id }) => /^finding-\d+-0$/.test(id));
    expect(marks.map(({ subject }) => subject?.id)).toEqual(marked.map(String));
  });
});

describe('units and trays without a place', () => {
  it('stand apart from one another and from those that are placed', () => {
    const { list } = draw(mixed().build());
    const boxes = boxesOf(list, ({ style }) => style === 'unit.box' || style === 'tray.box');
    expect(boxes).toHaveLength(4);
    boxes.forEach((box, index) => {
      for (const other of boxes.slice(index + 1)) expect(overlap(box, other)).toBe(false);
    });
  });

  it('draw the empty set as an empty sheet', () => {
    const { list } = draw(chassis('Empty').build());
    expect(list.items.some(({ id }) => id === 'paper')).toBe(true);
    expect(Number.isFinite(list.bounds.width)).toBe(true);
  });
});
