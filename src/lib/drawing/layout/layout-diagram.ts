// Lays a chassis out: parts are placed, their lines are run, all of it is proved; of several tries the
// best is kept. A diagram that is there already is only added to: what the user knows stays where it is.
import type { Study } from '#study/index.ts';
import { buildPlan, type Plan } from '../presentation/plan.ts';
import { proveGeometry, type Proofs } from '../proofs.ts';
import { findFirstPlaces } from './first/first-places.ts';
import type { LayoutEngine } from './first/layout-engine.ts';
import type { Geometry } from './geometry.ts';
import { LayoutError, type LayoutOptions } from './layout-options.ts';
import { Packing } from './packing/packing.ts';
import { runLines } from './run-lines.ts';
import { startLimits } from './run-limits.ts';

export interface DiagramLayout {
  readonly plan: Plan;
  readonly geometry: Geometry;
  readonly proofs: Proofs;
}

/** A sheet should be no wider than this many times its height. */
const widestShare = 2;
/** Lines up to which a try is so quick that some more are made. */
const fewLines = 200;

/** What makes a drawing hard to read, as one figure: the smaller the better. */
export const scoreOf = ({
  geometry: { width, height },
  proofs
}: Pick<DiagramLayout, 'geometry' | 'proofs'>): number => {
  const tooWide = Math.max(0, width / Math.max(1, height) / widestShare - 1);
  const broken = proofs.overlaps.length + proofs.throughParts.length + proofs.partClashes.length;
  return (
    proofs.crossings * 10 +
    proofs.bends * 2 +
    proofs.lengthMm * 0.012 +
    width * height * 1e-3 +
    tooWide * proofs.lines * 13 +
    broken * 1e4
  );
};

/** How much room wires need beside the parts: the more of them there are for each part, the more. */
const easeOf = ({ links, homes }: Plan): number =>
  Math.min(4.5, Math.max(1.6, 0.8 + (0.5 * links.lines.length) / Math.max(1, homes.size)));

/** The best of several layouts of a study, or the one before with what is new in it. Rejects with a
 *  LayoutError where it was stopped, or where not even one layout was ready in time. */
export const layoutDiagram = async (
  study: Study,
  engine: LayoutEngine,
  options: LayoutOptions = {}
): Promise<DiagramLayout> => {
  const plan = buildPlan(study);
  const { onProgress, before = null } = options;
  const tries = before ? 1 : (options.tries ?? (plan.links.lines.length <= fewLines ? 2 : 1));
  const limits = startLimits(options);
  const of = 1 + tries * (Packing.steps + 1);
  let done = 0;
  const step = async (name: string): Promise<void> => {
    onProgress?.({ done: done++, of, name });
    await limits.pause();
  };
  let best: DiagramLayout | null = null;
  let ease = easeOf(plan);
  try {
    await step('putting parts in layers');
    const first = before
      ? new Map()
      : await findFirstPlaces(
          new Packing(plan, { seed: 1, ease }).firstTask(),
          engine,
          limits.within
        );
    for (let turn = 0; turn < tries && !(turn > 0 && limits.isEnough()); turn++) {
      const packing = new Packing(plan, { seed: turn + 1, ease });
      for (const name of before
        ? packing.add(before)
        : packing.place(turn % 2 === 0 ? first : null))
        await step(name);
      await step('running the lines');
      const geometry = runLines(packing.geometry, before ? 0 : 1);
      const layout = { plan, geometry, proofs: proveGeometry(geometry) };
      if (!best || scoreOf(layout) < scoreOf(best)) best = layout;
      // Where lines found no room, the next try gives them more.
      if (layout.proofs.throughParts.length + layout.proofs.overlaps.length > 0) ease *= 1.2;
    }
  } catch (error) {
    // A layout that is ready is better than none, unless somebody said stop.
    engine.stop();
    const isLate = error instanceof LayoutError && error.why === 'time';
    if (!best || !isLate) throw error;
  } finally {
    limits.end();
  }
  onProgress?.({ done: of, of, name: '' });
  if (!best) throw new RangeError('no layout was asked for: allow one try at least');
  return best;
};
