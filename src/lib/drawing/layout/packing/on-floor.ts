// Between millimetres and the lanes that parts are shifted by.
import type { Id } from '#document/index.ts';
import type { Block } from '../../presentation/blocks.ts';
import { roundMm } from '../../presentation/sides.ts';
import { laneMm } from '../../router/lanes.ts';

/** A unit and its parts that lines run to. */
export interface UnitOnFloor {
  readonly block: Block;
  readonly parts: readonly Id[];
}

export const toLanes = (mm: number): number => Math.round(mm / laneMm);
export const fromLanes = (lanes: number): number => roundMm(lanes * laneMm);
