// The items of a laid-out diagram: units, wires with their jackets and halos, parts, numbers, marks.
// Ids follow the document's own, so that they stay from one drawing to the next.
import type { Id } from '#document/index.ts';
import { findElement, terminalLabel } from '#document/references.ts';
import type { ClassBand } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { Diagram } from './diagram.ts';
import type { DisplayItem, Shape, Subject } from './display-list.ts';
import { Sketch, type Box, type FigureItem } from './figures/figure.ts';
import { drawTag } from './figures/number-tag.ts';
import { numberBox, type } from './figures/sizes.ts';
import { markRadius, type FindingMark } from './finding-marks.ts';
import { ItemList, placeShape } from './items.ts';
import type { DiagramLine, DiagramPart } from './layout/geometry.ts';
import { buildLooseRow } from './loose-wires.ts';
import { wholePath } from './number-diagram.ts';
import { describeLink } from './presentation/part-ends.ts';
import type { Plan } from './presentation/plan.ts';
import type { Spot } from './presentation/sides.ts';
import { trimPath } from './trim-path.ts';
import { wireTitle } from './wire-title.ts';

/** The loose numbers' row is at least this wide, and stands this far below the drawing; mm. */
const leastWidth = 210;
const looseGap = 4;

const corner = 1.3;

const pointsOf = (path: readonly Spot[]): number[] =>
  path.flatMap(({ x, y }) => [Math.round(x * 1e3) / 1e3, Math.round(y * 1e3) / 1e3]);

/** How far before a terminal the jacket is stripped, mm. */
const jacketEnd = 3;

/** Kinds of cable that are drawn with their jacket. */
export const jacketed: ReadonlySet<string> = new Set(['coax', 'shielded pair', 'shielded wire']);

/** Draws one diagram, layer by layer. */
export class DiagramDrawer {
  private readonly list = new ItemList();
  private readonly diagram: Diagram;
  private readonly plan: Plan;
  readonly numberBoxes = new Map<Id, Box[]>();

  constructor(diagram: Diagram) {
    this.diagram = diagram;
    this.plan = diagram.plan;
  }

  get items(): DisplayItem[] {
    return this.list.items;
  }

  frames(): void {
    for (const { block, box } of this.diagram.geometry.frames) {
      const more = block.unit
        ? { subject: { kind: 'unit', id: block.unit.id } as const, title: block.name }
        : { title: block.name };
      this.list.add(
        block.id,
        'units',
        'unit.box',
        placeShape({ kind: 'box', ...box, round: 2 }, { x: 0, y: 0 }),
        more
      );
      const shape: Shape = {
        kind: 'text',
        x: box.x + 3.5,
        y: box.y + 6,
        text: block.name,
        size: type.unit,
        anchor: 'start',
        face: 'sans',
        bold: true
      };
      this.list.add(
        `${block.id}-name`,
        'units',
        'unit.name',
        placeShape(shape, { x: 0, y: 0 }),
        more
      );
    }
  }

  lines(): void {
    // Heavier wires last, so that they lie on top.
    for (const line of this.diagram.geometry.lines) this.line(line);
  }

  private line(line: DiagramLine): void {
    const { link } = line;
    const points = pointsOf(wholePath(line));
    const shape: Shape = { kind: 'line', points, round: corner };
    const [wire] = link.wires;
    if (link.kind === 'wire' && wire !== undefined) {
      const { band } = this.plan.tagOf(wire);
      const subject = { kind: 'wire', id: wire } as const;
      const more = { subject, title: wireTitle(this.plan.study, wire) };
      this.casing(wire, link.id, line);
      if (band === '20k+')
        this.list.add(`${link.id}-halo`, 'wires', 'wire.20k+.halo', shape, { subject, order: -1 });
      this.list.add(link.id, 'wires', `wire.${band}`, shape, { ...more, order: bandOrder[band] });
      return;
    }
    const title = describeLink(this.plan, link);
    const part = { kind: 'part', id: link.from.part } as const;
    this.list.add(link.id, 'wires', link.kind === 'lead' ? 'lead' : link.kind, shape, {
      subject: part,
      title
    });
  }

  /** The jacket of a shielded or coaxial cable around its wire, outside the parts. */
  /** The jacket of a shielded or coaxial cable around its wire, up to shortly before its ends. */
  private casing(wire: Id, id: string, line: DiagramLine): void {
    const { wires, cables } = this.plan.study.document;
    const cable = findElement(wires, wire)?.cable;
    const found = cable === undefined ? undefined : findElement(cables, cable);
    if (!found || !jacketed.has(found.kind)) return;
    const points = pointsOf(trimPath(wholePath(line), jacketEnd));
    const shape: Shape = { kind: 'line', points, round: corner };
    const more = { subject: { kind: 'cable', id: found.id } as const, title: found.name };
    const add = (suffix: string, style: string, order: number) =>
      this.list.add(`${id}-${suffix}`, 'wires', style, shape, { ...more, order });
    add('jacket-edge', 'cable.casing.edge', -3);
    add('jacket', 'cable.casing', -2);
  }

  parts(): void {
    for (const part of this.diagram.geometry.parts) {
      for (const item of part.figure.items) this.figureItem(part, item);
    }
  }

  private figureItem({ id, box }: DiagramPart, item: FigureItem): void {
    const subject = subjectOf(id, item);
    const shape = placeShape(item.shape, box);
    if (item.wire !== undefined && item.layer === 'numbers' && shape.kind === 'box') {
      this.noteNumber(item.wire, shape);
    }
    this.list.add(`part-${id}-${item.key}`, item.layer, item.style, shape, {
      subject,
      title: this.titleOf(subject)
    });
  }

  private noteNumber(wire: Id, box: Box): void {
    const known = this.numberBoxes.get(wire);
    if (known) known.push(box);
    else this.numberBoxes.set(wire, [box]);
  }

  private titleOf({ kind, id }: Subject): string {
    const { study } = this.plan;
    if (kind === 'wire') return wireTitle(study, id);
    if (kind === 'terminal') {
      const entry = study.index.terminalByKey.get(id);
      return entry ? terminalLabel(entry.part, entry.terminal) : '';
    }
    const part = study.index.partById.get(id);
    return part
      ? [part.reference, part.type ?? part.value ?? part.kind, part.function]
          .filter(Boolean)
          .join(', ')
      : '';
  }

  numbers(): void {
    const counts = new Map<Id, number>();
    for (const { tag, place } of this.diagram.tags) {
      const sketch = new Sketch();
      drawTag(sketch, tag, place.x, place.y, place.upright);
      const turn = (counts.get(tag.wire) ?? 0) + 1;
      counts.set(tag.wire, turn);
      this.noteNumber(tag.wire, place.box);
      for (const { key, layer, style, shape } of sketch.items) {
        this.list.add(
          `number-${tag.wire}-${turn}-${key}`,
          layer,
          style,
          placeShape(shape, { x: 0, y: 0 }),
          {
            subject: { kind: 'wire', id: tag.wire },
            title: wireTitle(this.plan.study, tag.wire)
          }
        );
      }
    }
    for (const { cable, text, place } of this.diagram.cableNames) {
      const sketch = new Sketch();
      sketch.box('cable.name.box', place.box, numberBox.round, { layer: 'numbers' });
      sketch.text('cable.name', text, place.x, place.y, {
        size: type.small,
        layer: 'numbers',
        ...(place.upright ? { turn: -90 } : {})
      });
      for (const { key, layer, style, shape } of sketch.items) {
        this.list.add(`cable-${cable}-${key}`, layer, style, placeShape(shape, { x: 0, y: 0 }), {
          subject: { kind: 'cable', id: cable },
          title: text
        });
      }
    }
  }

  /** Numbers of wires without a place, below the drawing; returns the room they take. */
  loose(): number {
    const { x, y, width, height } = this.diagram.geometry;
    const row = buildLooseRow(this.plan, Math.max(width, leastWidth));
    if (!row) return 0;
    for (const { key, layer, style, shape, wire } of row.sketch.items) {
      const placed = placeShape(shape, { x, y: y + height + looseGap });
      if (wire !== undefined && placed.kind === 'box') this.noteNumber(wire, placed);
      const more =
        wire === undefined
          ? {}
          : {
              subject: { kind: 'wire', id: wire } as const,
              title: wireTitle(this.plan.study, wire)
            };
      this.list.add(`loose-${key}`, layer, style, placed, more);
    }
    return row.height + looseGap;
  }

  marks(marks: readonly FindingMark[]): void {
    for (const { number, finding, at } of marks) {
      const subject = { kind: 'finding', id: String(number - 1) } as const;
      const title = `${finding.severity}: ${finding.message}`;
      const style = `finding.${finding.severity}`;
      const circle: Shape = { kind: 'circle', x: at.x, y: at.y, r: markRadius };
      this.list.add(
        `finding-${number}-disc`,
        'findings',
        `${style}.disc`,
        placeShape(circle, { x: 0, y: 0 }),
        { subject, title }
      );
      const sketch = new Sketch();
      sketch.text(`${style}.text`, String(number), at.x, at.y, {
        size: number > 99 ? 1.7 : 2.2,
        bold: true
      });
      for (const { shape } of sketch.items) {
        this.list.add(
          `finding-${number}-text`,
          'findings',
          `${style}.text`,
          placeShape(shape, { x: 0, y: 0 }),
          { subject, title }
        );
      }
    }
  }
}

const bandOrder: Readonly<Record<ClassBand, number>> = {
  '300': 0,
  '600': 1,
  'not known': 2,
  '1k-3k': 3,
  '5k-15k': 4,
  '20k+': 5
};

const subjectOf = (part: Id, { wire, component, terminal }: FigureItem): Subject => {
  if (wire !== undefined) return { kind: 'wire', id: wire };
  if (component !== undefined) return { kind: 'part', id: component };
  if (terminal !== undefined) return { kind: 'terminal', id: terminalKey(part, terminal) };
  return { kind: 'part', id: part };
};
