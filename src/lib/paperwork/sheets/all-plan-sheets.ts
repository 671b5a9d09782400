// Everything that follows from a plan, made in one go: for the command line and for print.
import {
  buildCutList,
  buildPlan,
  buildShoppingList,
  chanceFrom,
  orderOfWork,
  type CutList,
  type CutProgress,
  type Plan,
  type PlanOptions,
  type ShoppingList,
  type WorkMode,
  type WorkStep
} from '#plan/index.ts';
import type { Study } from '#study/index.ts';
import { cutSheet, orderSheet, planSheet, shoppingSheet } from './plan-sheets.ts';
import type { Sheet } from './sheet.ts';

export interface WholePlan {
  readonly plan: Plan;
  readonly cuts: CutList;
  readonly shopping: ShoppingList;
  readonly order: readonly WorkStep[];
}

export interface WholePlanOptions extends PlanOptions {
  readonly mode?: WorkMode;
  /** Of chance: the same list comes out of the same document. */
  readonly seed?: number;
  readonly onProgress?: (progress: CutProgress) => boolean;
}

export function makeWholePlan(study: Study, options: WholePlanOptions = {}): WholePlan {
  const { seed = 1, mode, onProgress } = options;
  const plan = buildPlan(study, options);
  const cuts = buildCutList(plan, {
    chance: chanceFrom(seed),
    ...(onProgress ? { onProgress } : {})
  });
  return {
    plan,
    cuts,
    shopping: buildShoppingList(study, plan, cuts, chanceFrom(seed)),
    order: orderOfWork(study, plan, mode)
  };
}

export const planSheets = (study: Study, whole: WholePlan): readonly Sheet[] => [
  planSheet(study, whole.plan),
  cutSheet(study, whole.cuts),
  shoppingSheet(study, whole.shopping),
  orderSheet(study, whole.order)
];

/** The plan as JSON for other programs, ids and figures as they are. */
export const wholePlanToJson = ({ plan, cuts, shopping, order }: WholePlan): string =>
  JSON.stringify(
    {
      wires: plan.wires.map(({ stockType, ...own }) => ({
        ...own,
        stockType: stockType?.name ?? null
      })),
      cuts: {
        ...cuts,
        cuts: cuts.cuts.map(({ stock, pieces, leftMm, left }) => ({
          stock: stock.id,
          name: stock.name,
          pieces,
          leftMm,
          left
        }))
      },
      shopping,
      order
    },
    null,
    1
  ) + '\n';
