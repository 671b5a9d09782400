// The bench list's head: which step a wire is ready for, what would be out of order and why, what can be
// done next. Nothing is forbidden; nothing goes out of order without a word.
import type { Changes } from '#document/edits.ts';
import { setWireFields } from '#document/edits.ts';
import { findElement } from '#document/references.ts';
import { wireStates, type Edit, type Id, type Wire, type WireState } from '#document/index.ts';
import type { Plan, WirePlan, WorkStep } from '#plan/index.ts';
import type { Study } from '#study/index.ts';
import { wireName } from '../core/words.ts';

/** What is ticked off; "found" is where every wire begins. */
export const benchSteps = ['tagged', 'removed', 'fitted', 'checked'] as const;
export type BenchStep = (typeof benchSteps)[number];

const indexOf = (state: WireState): number => wireStates.indexOf(state);

/** The steps of a wire: one that stays is tagged and checked, and never comes out. */
export const stepsOf = (
  own: WirePlan | undefined,
  { state, planned }: Wire
): readonly BenchStep[] => {
  const stays = own?.way === 'keep' || (own?.by === 'done' && planned.way === 'keep');
  const wasOut = state === 'removed' || state === 'fitted';
  return stays && !wasOut ? ['tagged', 'checked'] : benchSteps;
};

export const isReached = ({ state }: Wire, step: BenchStep): boolean =>
  indexOf(state) >= indexOf(step);

/** The step that comes next; null where all is done. */
export const nextStep = (own: WirePlan | undefined, wire: Wire): BenchStep | null =>
  stepsOf(own, wire).find((step) => !isReached(wire, step)) ?? null;

const named = (wires: readonly Wire[]): string => {
  const [first] = wires;
  if (first === undefined) return '';
  if (wires.length === 1) return wireName(first);
  return `wires ${wires.map(({ number }) => number || 'without number').join(', ')}`;
};

/** What is out of order about a step, each in words; empty where nothing is. */
export function outOfOrder(
  study: Study,
  plan: Plan,
  wire: Wire,
  step: BenchStep
): readonly string[] {
  const own = plan.byWire.get(wire.id);
  const steps = stepsOf(own, wire);
  const left = steps.slice(0, steps.indexOf(step)).filter((each) => !isReached(wire, each));
  const words = left.length === 0 ? [] : [`It was not ${left.join(' or ')} yet.`];
  if (step === 'removed') words.push(...beforeRemoval(study, wire, own));
  if (step === 'fitted') words.push(...beforeFitting(study, wire, own));
  return words;
}

function beforeRemoval(study: Study, wire: Wire, own: WirePlan | undefined): readonly string[] {
  const out = study.index.wires.filter(({ id, state }) => state === 'removed' && id !== wire.id);
  return [
    wire.number.trim() === '' ? 'It has no number: soon nobody will know which it was.' : '',
    wire.planned.way === undefined ? 'Nothing is written down to come in its place.' : '',
    own?.unmet ? 'Nothing is there for it yet: leave the old one in.' : '',
    wire.tapedMm === undefined && own?.cutMm == null && own?.way !== 'keep'
      ? 'Its length is not known: tape it while it is in.'
      : '',
    out.length > 0
      ? `${capital(named(out))} ${out.length === 1 ? 'is' : 'are'} out and not fitted yet: one at a time, and nothing has to be remembered.`
      : ''
  ].filter((text) => text !== '');
}

function beforeFitting(study: Study, wire: Wire, own: WirePlan | undefined): readonly string[] {
  const falls = own?.costs ?? [];
  const beside = Object.values(study.document.supports).flatMap((support) => {
    if (wire.route?.supports.includes(support.id) !== true) return [];
    if (support.kind !== 'clamp' && support.kind !== 'tie') return [];
    const waiting = study.index.wires.filter(
      ({ id, route, planned, state }) =>
        id !== wire.id &&
        route?.supports.includes(support.id) === true &&
        planned.way === 'new wire' &&
        indexOf(state) < indexOf('fitted')
    );
    return waiting.length === 0
      ? []
      : [
          `At the ${support.kind} ${support.name} ${named(waiting)} ${waiting.length === 1 ? 'is' : 'are'} still to be replaced: leave it open.`
        ];
  });
  return [...falls.map((text) => `What is planned falls short: ${text}.`), ...beside];
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Marks a step, with the day. */
export const stepEdit = (wire: Wire, step: BenchStep, on: string): Edit =>
  setWireFields(wire.id, { state: step, work: { [step]: { on } } });

/** Takes a step back, and every later one with it. */
export function stepBackEdit(own: WirePlan | undefined, wire: Wire, step: BenchStep): Edit {
  const steps = stepsOf(own, wire);
  const before = steps[steps.indexOf(step) - 1] ?? 'found';
  const gone = benchSteps.filter((each) => indexOf(each) >= indexOf(step) && wire.work?.[each]);
  const work: Changes<NonNullable<Wire['work']>> = Object.fromEntries(
    gone.map((each) => [each, null])
  );
  return setWireFields(wire.id, { state: before, ...(gone.length === 0 ? {} : { work }) });
}

export interface NextStep {
  readonly wire: Wire;
  readonly step: BenchStep;
}

/** What can be done next with nothing out of order: what is out comes in first, what is in is checked, then
 *  the next by the order of work is taken out, then tagged. */
export function whatNext(
  study: Study,
  plan: Plan,
  order: readonly WorkStep[],
  most: number
): readonly NextStep[] {
  const inTurn = [
    ...order.flatMap(({ wires }) => wires.map(({ wire }) => wire)),
    ...study.index.wires.map(({ id }) => id)
  ];
  const wires = [...new Set<Id>(inTurn)].flatMap(
    (id) => findElement(study.document.wires, id) ?? []
  );
  const ready = wires.flatMap((wire): NextStep[] => {
    const step = nextStep(plan.byWire.get(wire.id), wire);
    return step !== null && outOfOrder(study, plan, wire, step).length === 0
      ? [{ wire, step }]
      : [];
  });
  const rank: readonly BenchStep[] = ['fitted', 'checked', 'removed', 'tagged'];
  return rank.flatMap((step) => ready.filter((each) => each.step === step)).slice(0, most);
}

export interface BenchProgress {
  readonly wires: number;
  readonly reached: Readonly<Record<BenchStep, number>>;
  readonly out: number;
}

export function benchProgress({ index }: Study): BenchProgress {
  const reached = Object.fromEntries(
    benchSteps.map((step) => [step, index.wires.filter((wire) => isReached(wire, step)).length])
  ) as Record<BenchStep, number>;
  return {
    wires: index.wires.length,
    reached,
    out: index.wires.filter(({ state }) => state === 'removed').length
  };
}

/** What a step is called as something to do. */
export const stepVerbs: Readonly<Record<BenchStep, string>> = {
  tagged: 'Tag',
  removed: 'Take out',
  fitted: 'Fit',
  checked: 'Check'
};
/** And as something that was done. */
export const stepNames: Readonly<Record<BenchStep, string>> = {
  tagged: 'Tagged',
  removed: 'Out',
  fitted: 'In',
  checked: 'Checked'
};
