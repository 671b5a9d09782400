// What a person likes and the browser remembers: light or dark, millimetres or inches, which
// columns the schedule shows, where the fold between the pages lies. Never part of a document.
import { leavesOf, type Leaf } from './leaves.ts';
import { ways, type Way } from './ways.ts';

export const themes = ['system', 'light', 'dark'] as const;
export type Theme = (typeof themes)[number];
export const lengthUnits = ['mm', 'in'] as const;
export type LengthUnit = (typeof lengthUnits)[number];
export const columnSets = ['overview', 'found', 'electrical', 'all', 'own'] as const;
export type ColumnSet = (typeof columnSets)[number];

/** The part of the browser's storage that is used; absent or refusing storage is no fault. */
export interface PreferenceStore {
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
}

/** Of every key; static/theme.js reads "underchassis.theme" as well, before anything is drawn. */
const prefix = 'underchassis.';

/** Where the fold may lie, as a share of the width. */
export const foldLimits = { least: 0.26, most: 0.68, start: 0.42 } as const;

export class Preferences {
  theme = $state<Theme>('system');
  lengthUnit = $state<LengthUnit>('mm');
  columnSet = $state<ColumnSet>('overview');
  /** Ids of the columns of the person's own choice, left to right; empty: none was made yet. */
  ownColumns = $state.raw<readonly string[]>([]);
  fold = $state<number>(foldLimits.start);
  way = $state<Way>('plan');
  /** The leaf that is open in each way of working. */
  leaves = $state.raw<Readonly<Record<Way, Leaf>>>({
    capture: leavesOf.capture[0],
    plan: leavesOf.plan[0],
    work: leavesOf.work[0],
    share: leavesOf.share[0]
  });
  cautionsRead = $state(false);
  /** The short tour of the book has been taken, or put away. */
  guideDone = $state(false);
  readonly #store: PreferenceStore | null;

  constructor(store: PreferenceStore | null) {
    this.#store = store;
    this.theme = this.#read('theme', themes) ?? 'system';
    this.lengthUnit = this.#read('length-unit', lengthUnits) ?? 'mm';
    this.columnSet = this.#read('columns', columnSets) ?? 'overview';
    this.ownColumns = (this.#text('own-columns') ?? '').split(' ').filter((id) => id !== '');
    this.way = this.#read('way', ways) ?? 'plan';
    for (const way of ways) {
      const leaf = this.#read(`leaf-${way}`, leavesOf[way]);
      if (leaf !== null) this.leaves = { ...this.leaves, [way]: leaf };
    }
    this.cautionsRead = this.#text('cautions-read') === 'yes';
    this.guideDone = this.#text('guide-done') === 'yes';
    const fold = Number(this.#text('fold') ?? Number.NaN);
    if (Number.isFinite(fold)) this.fold = limitFold(fold);
  }

  setTheme(theme: Theme): void {
    this.theme = theme;
    this.#write('theme', theme);
  }

  setLengthUnit(unit: LengthUnit): void {
    this.lengthUnit = unit;
    this.#write('length-unit', unit);
  }

  setColumnSet(set: ColumnSet): void {
    this.columnSet = set;
    this.#write('columns', set);
  }

  setOwnColumns(ids: readonly string[]): void {
    this.ownColumns = ids;
    this.#write('own-columns', ids.join(' '));
    this.setColumnSet('own');
  }

  setFold(share: number): void {
    this.fold = limitFold(share);
    this.#write('fold', this.fold.toFixed(3));
  }

  setWay(way: Way): void {
    this.way = way;
    this.#write('way', way);
  }

  setLeaf(way: Way, leaf: Leaf): void {
    this.leaves = { ...this.leaves, [way]: leaf };
    this.#write(`leaf-${way}`, leaf);
  }

  /** The wire that somebody stopped at on the bench list of a chassis; null where it was another chassis. */
  benchAt(document: string): string | null {
    const [of, wire] = (this.#text('bench-at') ?? '').split(' ');
    return of === document && wire !== undefined ? wire : null;
  }

  setBenchAt(document: string, wire: string): void {
    this.#write('bench-at', `${document} ${wire}`);
  }

  /** What stands before the text in the code of a tag; empty until somebody sets one. */
  get tagAddress(): string {
    return this.#text('tag-address') ?? '';
  }

  setTagAddress(address: string): void {
    this.#write('tag-address', address);
  }

  setGuideDone(done = true): void {
    this.guideDone = done;
    this.#write('guide-done', done ? 'yes' : 'no');
  }

  setCautionsRead(): void {
    this.cautionsRead = true;
    this.#write('cautions-read', 'yes');
  }

  #text(name: string): string | null {
    try {
      return this.#store?.getItem(prefix + name) ?? null;
    } catch {
      return null;
    }
  }

  #read<T extends string>(name: string, allowed: readonly T[]): T | null {
    const text = this.#text(name);
    return allowed.find((value) => value === text) ?? null;
  }

  // A browser that refuses storage still lets the choice hold until the page is closed.
  #write(name: string, value: string): void {
    try {
      this.#store?.setItem(prefix + name, value);
    } catch {
      return;
    }
  }
}

/** The share kept within what leaves both pages usable. */
export const limitFold = (share: number): number =>
  Math.min(foldLimits.most, Math.max(foldLimits.least, share));
