// From geometry to the items of the display list: units, supports, parts, wires, names, numbers and
// marks, each with its id, what it stands for, and a title.
import type { Finding } from '#checks/index.ts';
import type { Id } from '#document/index.ts';
import { formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { DisplayItem, Shape, Subject } from '../display-list.ts';
import { Sketch, type Box, type FigureItem } from '../figures/figure.ts';
import { drawTag, tagWidth, type NumberTag } from '../figures/number-tag.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import { markRadius } from '../finding-marks.ts';
import { ItemList, placeShape } from '../items.ts';
import { buildTag } from '../presentation/plan.ts';
import type { Spot } from '../presentation/sides.ts';
import { textWidthMm } from '../text-width.ts';
import { wireTitle } from '../wire-title.ts';
import { drawHanging } from './draw-hanging.ts';
import { drawPart } from './draw-part.ts';
import { drawSupport } from './draw-supports.ts';
import { addLooseMarks, addWires, listLooseMarks, type LooseMark } from './draw-wires.ts';
import { bodyCorners } from './hanging-places.ts';
import type { PictorialGeometry } from './pictorial-geometry.ts';
import { findPlaceBeside, markBox, placePartName } from './place-names.ts';
import { placeTags } from './place-tags.ts';
import { outlineCorners } from './placed-part.ts';
import { hostKey } from './terminal-spots.ts';
import { partTitle, supportTitle, terminalTitle } from './titles.ts';

const here = { x: 0, y: 0 } as const;

const boxAround = (spots: readonly Spot[]): Box => {
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

export class SheetItems {
  private readonly list = new ItemList();
  private readonly study: Study;
  private readonly geometry: PictorialGeometry;
  /** Boxes of text that must stay readable. */
  private readonly names: Box[] = [];
  private readonly numberBoxes = new Map<Id, Box>();
  private readonly loose: readonly LooseMark[];
  private readonly partBoxes = new Map<Id, Box>();

  constructor(study: Study, geometry: PictorialGeometry) {
    this.study = study;
    this.geometry = geometry;
    this.loose = listLooseMarks(geometry.lines);
  }

  get items(): readonly DisplayItem[] {
    return this.list.items;
  }

  /** The box that holds everything added so far. */
  box(): Box {
    const spots = this.list.items.flatMap(({ shape }) => spotsOf(shape));
    return spots.length > 0 ? boxAround(spots) : { x: 0, y: 0, width: 0, height: 0 };
  }

  /** Units, trays and supports. */
  addPlaces(): void {
    const { units, trays, supports } = this.geometry.places;
    for (const { unit, box } of units) {
      const more = { subject: { kind: 'unit', id: unit.id } as const, title: unit.name };
      this.add(`unit-${unit.id}`, 'units', 'unit.box', { kind: 'box', ...box, round: 2 }, more);
      this.addHeading(`unit-${unit.id}-name`, 'unit.name', unit.name, box, more);
    }
    for (const { id, name, box } of trays) {
      const title = `${name}: not placed`;
      this.add(`tray-${id}`, 'units', 'tray.box', { kind: 'box', ...box, round: 2 }, { title });
      this.addHeading(`tray-${id}-name`, 'tray.name', title, box, { title });
    }
    for (const { support, at } of supports.values()) {
      const more = {
        subject: { kind: 'support', id: support.id } as const,
        title: supportTitle(support)
      };
      const fit = this.geometry.fits.get(support.id) ?? null;
      this.addFigure(`support-${support.id}`, drawSupport(support, at, fit), () => more);
    }
  }

  /** Parts, components that hang by their leads, and all names. */
  addParts(): void {
    const { places, bodies, clutter, over, spots } = this.geometry;
    const used = this.usedTerminals();
    // A picture tube's bulb lies below the yoke that sits on its neck.
    const parts = [...places.parts.values()].toSorted(
      (a, b) => Number(b.look === 'picture tube') - Number(a.look === 'picture tube')
    );
    for (const placed of parts) {
      const { part } = placed;
      this.partBoxes.set(part.id, boxAround(outlineCorners(placed)));
      this.addFigure(
        `part-${part.id}`,
        drawPart(placed, { used: used.get(part.id) ?? new Set() }),
        (item) => this.subjectOf(part.id, item)
      );
      for (const spot of placed.spots.values()) this.names.push(boxAround([spot, spot]));
    }
    for (const { terminal, part, line } of this.geometry.partLeads) {
      const points = line.flatMap(({ x, y }) => [x, y]);
      const more = this.subjectOf(part, { terminal });
      this.add(`lead-${part}-${terminal}`, 'parts', 'lead', { kind: 'line', points }, more);
    }
    for (const placed of bodies) {
      const { part } = placed;
      this.partBoxes.set(part.id, boxAround(bodyCorners(placed)));
      this.names.push(boxAround(bodyCorners(placed)));
      this.addFigure(`part-${part.id}`, drawHanging(placed), (item) =>
        this.subjectOf(part.id, item)
      );
    }
    for (const { box } of this.loose) markBox(box, clutter);
    for (const placed of places.parts.values()) {
      const { items, box } = placePartName(placed, clutter, over);
      this.names.push(box);
      this.addFigure(`name-${placed.part.id}`, items, () => this.subjectOf(placed.part.id, {}));
    }
    for (const { support, at } of places.supports.values()) {
      const look = { size: typeSizes.small, face: 'sans', bold: true } as const;
      const width = textWidthMm(support.name, look);
      const fit = this.geometry.fits.get(support.id) ?? null;
      const around = boxAround(
        drawSupport(support, at, fit).flatMap(({ shape }) => spotsOf(shape))
      );
      const box = findPlaceBeside(around, width, look.size * 1.2, clutter);
      markBox(box, clutter);
      this.names.push(box);
      const sketch = new Sketch();
      sketch.text('support.name', support.name, box.x + width / 2, box.y + box.height / 2, look);
      const more = {
        subject: { kind: 'support', id: support.id } as const,
        title: supportTitle(support)
      };
      this.addFigure(`support-${support.id}-name`, sketch.items, () => more);
    }
    for (const { at } of spots.values()) {
      this.names.push({ x: at.x - 1.6, y: at.y - 1.6, width: 3.2, height: 3.2 });
    }
  }

  /** Wires, where they end short of their terminals, and their numbers. */
  addWires(withLengths: boolean): void {
    const { lines, places, clutter } = this.geometry;
    addWires(
      this.list,
      this.study,
      lines,
      places.units.map(({ box }) => box)
    );
    addLooseMarks(this.list, this.study, this.loose);
    const tags = new Map<Id, NumberTag>(
      lines.map(({ wire }) => [wire, this.tagOf(wire, withLengths)] as const)
    );
    const wishes = lines.map(({ wire, line }) => {
      const tag = tags.get(wire);
      return { id: wire, line, width: tag ? tagWidth(tag) : 0 };
    });
    const turns = new Map<Id, number>();
    for (const { id, box, upright, tie } of placeTags(
      wishes,
      [...this.names, ...this.loose.map(({ box }) => box)],
      clutter
    )) {
      const tag = tags.get(id);
      if (!tag) continue;
      const turn = (turns.get(id) ?? 0) + 1;
      turns.set(id, turn);
      const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      const sketch = new Sketch();
      if (tie) sketch.line('part.fine', [tie.x, tie.y, middle.x, middle.y], { layer: 'numbers' });
      drawTag(sketch, tag, middle.x, middle.y, upright);
      if (turn === 1) this.numberBoxes.set(id, box);
      const more = { subject: { kind: 'wire', id } as const, title: wireTitle(this.study, id) };
      this.addFigure(`number-${id}-${turn}`, sketch.items, () => more);
    }
  }

  /** The numbered marks that tie the notes to their places. */
  addFindings(findings: readonly Finding[], isMarked: (finding: Finding) => boolean): void {
    const taken = new Map<string, number>();
    findings.forEach((finding, index) => {
      if (!isMarked(finding)) return;
      const spot = this.findSpot(finding);
      if (!spot) return;
      const key = `${spot.x.toFixed(1)} ${spot.y.toFixed(1)}`;
      const before = taken.get(key) ?? 0;
      taken.set(key, before + 1);
      this.addMark(finding, index, { x: spot.x + before * (markRadius * 2 + 0.3), y: spot.y });
    });
  }

  private addMark(finding: Finding, index: number, at: Spot): void {
    const more = {
      subject: { kind: 'finding', id: String(index) } as const,
      title: `${finding.severity}: ${finding.message}`
    };
    const style = `finding.${finding.severity}`;
    const sketch = new Sketch();
    sketch.circle(`${style}.disc`, at.x, at.y, markRadius, { layer: 'findings' });
    sketch.text(`${style}.text`, String(index + 1), at.x, at.y, {
      size: index >= 99 ? 1.7 : 2.2,
      bold: true,
      layer: 'findings'
    });
    this.addFigure(`finding-${index + 1}`, sketch.items, () => more);
  }

  /** Where a finding's mark stands: beside the number, the terminal or the part that it is about. */
  private findSpot(finding: Finding): Spot | null {
    for (const { kind, id } of finding.at) {
      const number = kind === 'wire' ? this.numberBoxes.get(id) : undefined;
      if (number) return { x: number.x + number.width + 0.6, y: number.y - 0.9 };
      const terminal = kind === 'terminal' ? this.geometry.spots.get(id)?.at : undefined;
      if (terminal) return { x: terminal.x + 2.4, y: terminal.y - 2.4 };
      const part = kind === 'part' ? this.partBoxes.get(id) : undefined;
      if (part) return { x: part.x + 1.5, y: part.y + 1.5 };
      const unit =
        kind === 'unit' ? this.geometry.places.units.find((one) => one.unit.id === id) : undefined;
      if (unit) return { x: unit.box.x + unit.box.width - 4, y: unit.box.y + 4 };
    }
    return null;
  }

  private tagOf(wire: Id, withLengths: boolean): NumberTag {
    const tag = buildTag(this.study, wire, false);
    const length = this.study.wires.get(wire)?.length;
    if (!withLengths || !length) return tag;
    return { ...tag, step: `${tag.step} · ${formatMm(Math.round(length.mm))}` };
  }

  /** Terminals of each part that a wire or a lead ends at. */
  private usedTerminals(): ReadonlyMap<Id, ReadonlySet<Id>> {
    const { index } = this.study;
    const hosts = new Set(
      index.terminals.flatMap(({ terminal }) => (terminal.on ? [hostKey(terminal.on)] : []))
    );
    const used = new Map<Id, Set<Id>>();
    for (const { key, part, terminal } of index.terminals) {
      if (!index.wiresAt.has(key) && !hosts.has(key) && !terminal.on) continue;
      const known = used.get(part.id) ?? new Set<Id>();
      used.set(part.id, known.add(terminal.id));
    }
    return used;
  }

  private subjectOf(
    part: Id,
    { terminal }: Pick<FigureItem, 'terminal'>
  ): { subject: Subject; title: string } {
    const entry =
      terminal === undefined
        ? undefined
        : this.study.index.terminalByKey.get(terminalKey(part, terminal));
    if (entry) {
      const subject = { kind: 'terminal', id: entry.key } as const;
      return { subject, title: terminalTitle(this.study, entry.part, entry.terminal) };
    }
    const own = this.study.index.partById.get(part);
    return { subject: { kind: 'part', id: part }, title: own ? partTitle(own) : '' };
  }

  private addHeading(
    id: string,
    style: string,
    text: string,
    box: Box,
    more: { subject?: Subject; title: string }
  ): void {
    const look = { size: typeSizes.unit, face: 'sans', bold: true } as const;
    const width = textWidthMm(text, look);
    const [left, right] = [box.x + 3.5, box.x + box.width - 3.5 - width];
    const [top, bottom] = [box.y + 6, box.y + box.height - 3.5];
    // The corner that wires leave free, the upper left one where more are.
    const corners = [
      { x: left, y: top },
      { x: right, y: top },
      { x: left, y: bottom },
      { x: right, y: bottom }
    ];
    const costs = corners.map(({ x, y }) =>
      this.geometry.clutter.costOfBox({ x: x + width / 2, y: y - 1.5 }, width + 2, 6)
    );
    const at = corners[costs.indexOf(Math.min(...costs))] ?? { x: left, y: top };
    const taken = { x: at.x, y: at.y - 4.4, width, height: 6 };
    this.names.push(taken);
    markBox(taken, this.geometry.clutter);
    this.add(id, 'units', style, { kind: 'text', ...at, text, anchor: 'start', ...look }, more);
  }

  private addFigure(
    id: string,
    items: readonly FigureItem[],
    moreOf: (item: FigureItem) => { subject?: Subject; title?: string }
  ): void {
    for (const item of items)
      this.add(`${id}-${item.key}`, item.layer, item.style, item.shape, moreOf(item));
  }

  private add(
    id: string,
    layer: DisplayItem['layer'],
    style: string,
    shape: Shape,
    more: { subject?: Subject; title?: string } = {}
  ): void {
    this.list.add(id, layer, style, placeShape(shape, here), more);
  }
}

function spotsOf(shape: Shape): Spot[] {
  switch (shape.kind) {
    case 'line':
      return shape.points.flatMap((x, index) =>
        index % 2 === 0 ? [{ x, y: shape.points[index + 1] ?? 0 }] : []
      );
    case 'circle':
      return [
        { x: shape.x - shape.r, y: shape.y - shape.r },
        { x: shape.x + shape.r, y: shape.y + shape.r }
      ];
    case 'box':
      return [
        { x: shape.x, y: shape.y },
        { x: shape.x + shape.width, y: shape.y + shape.height }
      ];
    case 'text': {
      const width = textWidthMm(shape.text, shape);
      const left = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
      return [
        { x: shape.x + left, y: shape.y - shape.size },
        { x: shape.x + left + width, y: shape.y + shape.size * 0.3 }
      ];
    }
  }
}
