// Lays a chassis out several times: each layout teaches the next one where its lines really go, units
// that come out too wide are cut into sections, and the best of all is kept.
import type { Study } from '#study/index.ts';
import type { Courses } from '../presentation/part-ends.ts';
import { buildPlan, type Plan } from '../presentation/plan.ts';
import { proveGeometry, type Proofs } from '../proofs.ts';
import { arrange, type BlockCache } from './arrange.ts';
import { learnCourses } from './courses.ts';
import { LayoutError, type LayoutEngine, type LayoutOptions } from './engine.ts';
import { joinBlocks, type Geometry } from './join.ts';
import { runLines } from './run-lines.ts';
import { startLimits } from './run-limits.ts';

export interface DiagramLayout {
  readonly plan: Plan;
  readonly geometry: Geometry;
  readonly proofs: Proofs;
}

export interface DiagramLayoutOptions extends LayoutOptions {
  /** Layouts that are tried at most; 2 where nothing is said. */
  readonly tries?: number;
  /** Blocks that were laid out before; what has not changed is not laid out again. */
  readonly cache?: BlockCache;
}

/** Parts in a section of a unit. */
const sectionSize = 16;
/** With more wires than this nothing is laid out whole. */
const wholeUpTo = 500;
/** A sheet should be no wider than this many times its height. */
const widestShare = 2;

/** How wide the sheet will be for its height, the foot below the drawing included. */
const shareOf = ({ width, height }: Geometry): number => {
  const foot = 75 * Math.min(2, Math.max(1, width / 460));
  return width / Math.max(1, height + foot);
};

/** What makes a drawing hard to read, as one figure: the smaller the better. */
export const scoreOf = ({
  geometry,
  proofs
}: Pick<DiagramLayout, 'geometry' | 'proofs'>): number => {
  const tooWide = Math.max(0, shareOf(geometry) / widestShare - 1);
  const broken = proofs.overlaps.length + proofs.throughParts.length + proofs.partClashes.length;
  return (
    proofs.crossings * 10 +
    proofs.bends * 2 +
    proofs.lengthMm * 0.012 +
    geometry.width * geometry.height * 4e-4 +
    (tooWide + 2 * tooWide ** 2) * proofs.lines * 13 +
    broken * 1e4
  );
};

class Search {
  best: DiagramLayout | null = null;
  private courses: Courses = new Map();
  private plan: Plan;
  private isCut: boolean;
  private readonly study: Study;

  constructor(study: Study) {
    this.study = study;
    this.isCut = study.index.wires.length > wholeUpTo;
    this.plan = buildPlan(study, this.isCut ? { sectionSize } : {});
  }

  get blocks(): number {
    return this.plan.parents.size + 1;
  }

  async turn(options: Parameters<typeof arrange>[2]): Promise<void> {
    const { plan } = this;
    const geometry = runLines(joinBlocks(await arrange(plan, this.courses, options)), 1);
    const layout = { plan, geometry, proofs: proveGeometry(geometry) };
    if (!this.best || scoreOf(layout) < scoreOf(this.best)) this.best = layout;
    this.courses = learnCourses(geometry);
    if (this.isCut || shareOf(geometry) <= widestShare * 1.1) return;
    this.isCut = true;
    this.plan = buildPlan(this.study, { sectionSize });
    this.courses = new Map();
  }
}

/** The best of several layouts of a study. Rejects with a LayoutError where the engine fails, where it
 *  was stopped, or where not even one layout was ready in time. */
export const layoutDiagram = async (
  study: Study,
  engine: LayoutEngine,
  options: DiagramLayoutOptions = {}
): Promise<DiagramLayout> => {
  const { tries = 2, onProgress, cache } = options;
  const limits = startLimits(engine, options);
  const search = new Search(study);
  let done = 0;
  try {
    for (let turn = 0; turn < tries && !(turn > 0 && limits.isEnough()); turn++) {
      const all = search.blocks * (tries - turn) + done;
      await search.turn({
        lay: limits.lay,
        tuning: { keepsOrder: turn % 2 === 1, seed: turn + 1 },
        ...(cache ? { cache } : {}),
        onBlock: (name) => onProgress?.({ done: ++done, of: all, name })
      });
    }
  } catch (error) {
    // A layout that is ready is better than none, unless somebody said stop.
    const isLate = error instanceof LayoutError && error.why === 'time';
    if (!search.best || !isLate) throw error;
  } finally {
    limits.end();
  }
  if (!search.best)
    throw new LayoutError('engine', 'no layout was asked for: allow one try at least');
  return search.best;
};
