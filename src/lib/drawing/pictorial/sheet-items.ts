// Collects the items of the pictorial, each with its id, what it stands for and a title.
import type { Id, Support } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { DisplayItem, Layer, Shape, Subject } from '../display-list.ts';
import type { Box, FigureItem } from '../figures/figure.ts';
import { ItemList, placeShape } from '../items.ts';
import { wireTitle } from '../wire-title.ts';
import { boxAround, spotsOf } from './boxes.ts';
import { partTitle, supportTitle, terminalTitle } from './titles.ts';

/** What an item stands for, and what it is called. */
export interface Told {
  readonly subject?: Subject;
  readonly title?: string;
}

const here = { x: 0, y: 0 } as const;

export class SheetItems {
  private readonly list = new ItemList();
  private readonly study: Study;

  constructor(study: Study) {
    this.study = study;
  }

  get items(): readonly DisplayItem[] {
    return this.list.items;
  }

  /** The box that holds everything added so far. */
  box(): Box {
    const spots = this.list.items.flatMap(({ shape }) => spotsOf(shape));
    return spots.length > 0 ? boxAround(spots) : { x: 0, y: 0, width: 0, height: 0 };
  }

  add(id: string, layer: Layer, style: string, shape: Shape, told: Told = {}): void {
    this.list.add(id, layer, style, placeShape(shape, here), told);
  }

  /** Adds shapes that were drawn at their place. */
  addFigure(id: string, items: readonly FigureItem[], toldOf: (item: FigureItem) => Told): void {
    for (const item of items) {
      this.add(`${id}-${item.key}`, item.layer, item.style, item.shape, toldOf(item));
    }
  }

  ofWire(id: Id): Told {
    return { subject: { kind: 'wire', id }, title: wireTitle(this.study, id) };
  }

  ofSupport(support: Support): Told {
    return { subject: { kind: 'support', id: support.id }, title: supportTitle(support) };
  }

  /** A part, or one of its terminals. */
  ofPart(part: Id, terminal?: Id): Told {
    const { terminalByKey, partById } = this.study.index;
    const entry =
      terminal === undefined ? undefined : terminalByKey.get(terminalKey(part, terminal));
    if (entry) {
      return {
        subject: { kind: 'terminal', id: entry.key },
        title: terminalTitle(this.study, entry.part, entry.terminal)
      };
    }
    const own = partById.get(part);
    return { subject: { kind: 'part', id: part }, ...(own ? { title: partTitle(own) } : {}) };
  }
}
