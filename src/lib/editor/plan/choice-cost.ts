// What a choice would cost the wires that it is made for, in words: the least margin among them against that
// of now, and each thing that would fall short.
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { numberOf } from '#paperwork/index.ts';
import { foresee, type Choice, type Plan, type PlanOptions, type WirePlan } from '#plan/index.ts';
import { formatNumber } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';

export interface CostLine {
  readonly words: string;
  readonly isBad: boolean;
}

/** More than this are counted and not listed. */
const most = 4;

interface Ahead {
  readonly number: string;
  readonly now: WirePlan | undefined;
  readonly then: WirePlan;
}

const least = (all: readonly (WirePlan | undefined)[]): number | null => {
  const known = all.flatMap((own) => own?.margin?.ratio ?? []);
  return known.length === 0 ? null : Math.min(...known);
};

const times = (ratio: number | null): string =>
  ratio === null ? 'not known' : `${formatNumber(ratio, 3)} times`;

export function choiceCost(
  study: Study,
  plan: Plan,
  wires: readonly Id[],
  choice: Choice,
  options: PlanOptions
): readonly CostLine[] {
  const all = wires.flatMap((id): readonly Ahead[] => {
    const wire = findElement(study.document.wires, id);
    const then = wire && foresee(study, plan, wire, choice, options);
    return then ? [{ number: numberOf(study, id), now: plan.byWire.get(id), then }] : [];
  });
  const [before, after] = [least(all.map(({ now }) => now)), least(all.map(({ then }) => then))];
  const unknown = all.filter(
    ({ then }) => then.margin?.ratio == null && then.margin?.stressV !== 0
  );
  const short = all.filter(({ then }) => then.costs.length > 0);
  const many = wires.length > 1;
  return [
    {
      words: `${many ? 'Least margin' : 'Margin'} ${times(after)}; now ${times(before)}.`,
      isBad: false
    },
    ...(many && unknown.length > 0
      ? [{ words: `Of ${unknown.length} of them the margin is not known.`, isBad: true }]
      : []),
    ...short.slice(0, most).map(({ number, then }) => ({
      words: `${many ? `Wire ${number}: ` : ''}${then.costs.join('; ')}.`,
      isBad: true
    })),
    ...(short.length > most
      ? [{ words: `${short.length - most} more of them fall short.`, isBad: true }]
      : [])
  ];
}
