// Choices as edits: what a person decides of a wire, or of many, and the proposals taken over as they stand.
// What a choice would cost can be seen before it is made, reckoned by the same code as the plan itself.
import { doMany, setPlanned, type Changes } from '#document/edits.ts';
import { findElement } from '#document/references.ts';
import type { Edit, Id, Planned, Wire, WireWay } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { planIf } from './build-plan.ts';
import { ratingFor } from './judge-offer.ts';
import type { Offer, Plan, PlanOptions, StockType, VoltsKind, WirePlan } from './types.ts';

export interface Choice {
  readonly way: WireWay;
  /** What is cut for it; null leaves that to the plan, or to the shop. */
  readonly type: StockType | null;
  /** The one piece that it is to come from. */
  readonly stock?: Id;
}

const allKinds: readonly VoltsKind[] = ['dc', 'ac', 'pulse'];

/** The one rating that a plan has room for: where a wire carries several kinds, what holds for all of them. */
function ratingFields(
  offer: Offer,
  kinds: readonly VoltsKind[]
): Pick<Changes<Planned>, 'ratingV' | 'ratingKind'> {
  if (offer.style !== null) return { ratingV: null, ratingKind: null };
  const whole = ratingFor(offer, allKinds);
  if (whole.volts !== null) return { ratingV: whole.volts, ratingKind: 'any' };
  const [kind = 'dc', ...others] = kinds;
  const own = ratingFor(offer, [kind]);
  return others.length > 0 || own.volts === null
    ? { ratingV: null, ratingKind: null }
    : { ratingV: own.volts, ratingKind: kind };
}

const conductorOf = (offer: Offer, kinds: readonly VoltsKind[]): Changes<Planned> => ({
  awg: offer.awg,
  stranding: offer.stranding,
  plating: offer.plating,
  style: offer.style,
  insulation: offer.style === null ? offer.insulation : null,
  colour: offer.colour,
  tracer: offer.tracer,
  ratingC: offer.style === null ? offer.celsius : null,
  ...ratingFields(offer, kinds)
});

const noConductor: Changes<Planned> = {
  awg: null,
  stranding: null,
  plating: null,
  style: null,
  insulation: null,
  colour: null,
  tracer: null,
  ratingV: null,
  ratingKind: null,
  ratingC: null,
  diameterMm: null
};

/** What a choice writes down. Words that somebody wrote to the plan stay. */
function fieldsOf({ way, type, stock }: Choice, kinds: readonly VoltsKind[]): Changes<Planned> {
  const takesWire = way === 'new wire' || way === 'splice in';
  if (!takesWire) return { way, stock: null };
  return {
    way,
    stock: stock ?? null,
    ...(way === 'splice in' ? {} : { pieceMm: null }),
    ...noConductor,
    ...(type === null ? {} : conductorOf(type, kinds))
  };
}

const kindsOf = (plan: Plan, wire: Id): readonly VoltsKind[] =>
  plan.byWire.get(wire)?.want?.kinds ?? [];

/** A choice for one wire or many, one step of undo.
 *  @param choice null goes back to what the plan proposes */
export function chooseEdit(
  study: Study,
  plan: Plan,
  wires: readonly Id[],
  choice: Choice | null
): Edit {
  const edits = wires.map((id) =>
    setPlanned(
      id,
      choice === null
        ? { way: null, stock: null, pieceMm: null, ...noConductor }
        : fieldsOf(choice, kindsOf(plan, id))
    )
  );
  const [only] = wires;
  const wire = only === undefined ? undefined : findElement(study.document.wires, only);
  const what =
    wires.length === 1 && wire
      ? `wire ${wire.number || 'without number'}`
      : `${wires.length} wires`;
  return doMany(
    choice === null ? `back to what is proposed for ${what}` : `${choice.way} for ${what}`,
    edits
  );
}

/** All that the plan proposes, written down as one step of undo; null where there is nothing to take over.
 *  Of a wire that nothing is there for, only the way is written down. */
export function takeOverEdit(study: Study, plan: Plan): Edit | null {
  const proposed = plan.wires.filter(({ by }) => by === 'proposal');
  const edits = proposed.map((own) =>
    own.stockType === null
      ? setPlanned(own.wire, { way: own.way })
      : setPlanned(own.wire, fieldsOf({ way: own.way, type: own.stockType }, own.want?.kinds ?? []))
  );
  return edits.length === 0 ? null : doMany(`take over ${edits.length} proposals`, edits);
}

const withChanges = (planned: Planned, changes: Changes<Planned>): Planned => {
  const merged = new Map(Object.entries(planned));
  for (const [key, value] of Object.entries(changes)) {
    if (value === null) merged.delete(key);
    else if (value !== undefined) merged.set(key, value);
  }
  return Object.fromEntries(merged);
};

/** What a choice would make of a wire: margin, what it falls short of, notes. Null for a wire that is gone. */
export function foresee(
  study: Study,
  plan: Plan,
  wire: Wire,
  choice: Choice,
  options: PlanOptions = {}
): WirePlan | null {
  const planned = withChanges(wire.planned, fieldsOf(choice, kindsOf(plan, wire.id)));
  return planIf(study, { ...wire, planned }, choice.type, options);
}
