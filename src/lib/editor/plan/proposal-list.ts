// The proposals as a list to go through: which of them are shown, how they read in a line, and what one
// decision can be made for.
import type { Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { offerWords } from '#paperwork/index.ts';
import type { Plan, StockType, WirePlan } from '#plan/index.ts';
import { formatNumber, formatVolts } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { counted } from '../core/words.ts';

export const views = ['to do', 'to look at', 'kept', 'all'] as const;
export type View = (typeof views)[number];

const isToDo = ({ by, way }: WirePlan): boolean => by !== 'done' && way !== 'keep';

/** What falls short or cannot be met: somebody has to decide. */
export const needsLook = ({ costs, unmet, by }: WirePlan): boolean =>
  by !== 'done' && (costs.length > 0 || unmet !== null);

export const isInView = (own: WirePlan, view: View): boolean =>
  view === 'all' ||
  (view === 'to do' && isToDo(own)) ||
  (view === 'to look at' && needsLook(own)) ||
  (view === 'kept' && own.way === 'keep' && own.by !== 'done');

/** "34 to do, 92 kept, 3 done; 6 to look at". */
export const planSummary = ({ wires }: Plan): string => {
  const toDo = wires.filter(isToDo).length;
  const kept = wires.filter((own) => isInView(own, 'kept')).length;
  const done = wires.filter(({ by }) => by === 'done').length;
  return `${toDo} to do, ${kept} kept, ${done} done`;
};

/** What is done about it, in a few words. */
export const proposalWords = (own: WirePlan): string => {
  if (own.by === 'done') return 'done';
  if (own.way === 'keep') return 'keep';
  if (own.unmet) return `${own.way}: to buy`;
  return [own.way, offerWords(own)].filter((part) => part !== null).join(': ');
};

/** From where it is cut. */
export const fromWords = ({ stockType, unmet }: WirePlan): string =>
  stockType === null ? (unmet === null ? '' : 'nothing on the shelf') : `from ${stockType.name}`;

/** "1.44 ×", "at most 35 ×", or what is missing to say. */
export const marginWords = ({ margin, want }: WirePlan): string => {
  if (margin === null) return '';
  if (margin.ratio === null) return margin.stressV === 0 ? 'no stress' : 'not known';
  return `${want?.atLeast === true ? 'at most ' : ''}${formatNumber(margin.ratio, 3)} ×`;
};

/** What one decision is made for. */
export interface Scope {
  readonly id: 'one' | 'class' | 'ticked';
  readonly words: string;
  readonly wires: readonly Id[];
}

/** This wire, those of its class that something is done about, those that are ticked. A wire that is itself
 *  a part is in no scope but its own: hook-up wire must not take its place. */
export function scopesOf(
  study: Study,
  plan: Plan,
  wire: Wire,
  ticked: readonly Id[]
): readonly Scope[] {
  const classV = plan.byWire.get(wire.id)?.want?.classV;
  const may = (id: Id): boolean => findElement(study.document.wires, id)?.isPart === undefined;
  const ofClass = plan.wires
    .filter((own) => isToDo(own) && own.want?.classV === classV && may(own.wire))
    .map((own) => own.wire);
  const chosen = ticked.filter((id) => plan.byWire.has(id) && may(id));
  return [
    { id: 'one', words: 'this wire', wires: [wire.id] },
    ...(classV === undefined || ofClass.length < 2
      ? []
      : [
          {
            id: 'class' as const,
            words: `all ${ofClass.length} to do of the ${formatVolts(classV)} class`,
            wires: ofClass
          }
        ]),
    ...(chosen.length === 0
      ? []
      : [
          {
            id: 'ticked' as const,
            words: `${counted(chosen.length, 'ticked wire')}`,
            wires: chosen
          }
        ])
  ];
}

/** The shelf for one wire: what its plan would take first, then what falls least short. */
export const stockInTurn = (
  types: readonly StockType[],
  shortfalls: (type: StockType) => number,
  taken: StockType | null
): readonly StockType[] =>
  [...types].sort(
    (a, b) =>
      Number(b.key === taken?.key) - Number(a.key === taken?.key) || shortfalls(a) - shortfalls(b)
  );
