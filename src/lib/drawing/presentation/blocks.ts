// The boxes of a diagram: the units with their parts, and the sheet that holds the units.
import type { Id, Part, Unit } from '#document/index.ts';

export interface Block {
  readonly id: string;
  readonly kind: 'sheet' | 'unit';
  readonly name: string;
  readonly unit: Unit | null;
  /** Leftmost first. Empty where it holds parts. */
  readonly blocks: readonly Block[];
  readonly parts: readonly Id[];
  /** Parts that no line runs to: they stand below the others. */
  readonly loose: readonly Id[];
}

/** From a block up to the sheet: by id, the id of the block that holds it. */
export const buildParents = (sheet: Block): ReadonlyMap<string, Block> => {
  const parents = new Map<string, Block>();
  const walk = (block: Block): void => {
    for (const child of block.blocks) {
      parents.set(child.id, block);
      walk(child);
    }
  };
  walk(sheet);
  return parents;
};

/** The block that holds each part itself. */
export const buildHomes = (sheet: Block): ReadonlyMap<Id, Block> => {
  const homes = new Map<Id, Block>();
  const walk = (block: Block): void => {
    for (const part of [...block.parts, ...block.loose]) homes.set(part, block);
    block.blocks.forEach(walk);
  };
  walk(sheet);
  return homes;
};

const rightWords = /picture|neck|yoke|crt|speaker|output|cabinet/i;
const leftWords = /tuner|antenna|front|input|power|supply|control|panel/i;

/** Where a unit stands beside the biggest one: what comes in on its left, what goes out on its right. */
const leanOfUnit = (name: string, parts: readonly Part[]): -1 | 0 | 1 => {
  const has = (kind: string) => parts.some((part) => part.kind === kind);
  if (has('picture tube') || has('yoke')) return 1;
  if (rightWords.test(name) || (has('speaker') && parts.length < 6)) return 1;
  if (leftWords.test(name) || has('antenna')) return -1;
  return 0;
};

export interface UnitParts {
  readonly id: string;
  readonly unit: Unit | null;
  readonly name: string;
  readonly parts: readonly Part[];
}

/** Units from left to right: those that feed the biggest, the biggest, those that it feeds. */
export const orderUnits = (units: readonly UnitParts[]): UnitParts[] => {
  const biggest = units.reduce<UnitParts | null>(
    (best, unit) => (!best || unit.parts.length > best.parts.length ? unit : best),
    null
  );
  const left: UnitParts[] = [];
  const right: UnitParts[] = [];
  const size = (list: readonly UnitParts[]) =>
    list.reduce((sum, { parts }) => sum + parts.length, 0);
  const rest = units.filter((unit) => unit !== biggest);
  for (const unit of rest) {
    const lean = leanOfUnit(unit.name, unit.parts);
    if (lean === 1) right.push(unit);
    if (lean === -1) left.push(unit);
  }
  for (const unit of rest) {
    if (leanOfUnit(unit.name, unit.parts) !== 0) continue;
    (size(left) <= size(right) ? left : right).push(unit);
  }
  return biggest ? [...left, biggest, ...right] : [];
};
