// The insulation that was found is rated below the class that the wire needs.
import type { Edit, Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import { cautionAtVolts } from '../cautions.ts';
import { classReasoning } from '../class-reasoning.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { isFoundInPlace, planWillDo, shortfallOf } from '../shortfall.ts';
import { carriesWords, classWords, commonPractice, ratingWords, wiresAsSubject } from '../words.ts';

export const classFound: Rule = {
  id: 'class-found',
  severity: 'danger',
  title: 'Insulation found below the class that the wire needs',
  source: commonPractice,
  explain:
    'The stress of a wire (dc, 1.414 x ac rms and pulse peak added) times the margin asks for an insulation class; a supply rail and the line side (from the plug by way of fuses and switches to the primary, rectifier or heaters) ask for the floors of the policy at least, 600 V each unless it says otherwise. The rating that is marked on the wire, or that its style has, is held against that. Below the stress itself at 1 kV and more it is a danger, below the stress a fault, short of the margin only a caution. Where what is planned will do, one degree or more is taken off. It passes with a higher rating found, or with a lower stress declared from a measurement.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  const rating = about?.foundRating;
  if (!about?.need || !about.stress || !rating || !isFoundInPlace(wire)) return [];
  const shortfall = shortfallOf(rating, about);
  if (!shortfall) return [];
  const planned = planWillDo(wire, about);
  const severity = !planned ? shortfall : shortfall === 'danger' ? 'caution' : 'note';
  const keep = wire.planned.way === 'keep' ? ' It is to be kept.' : '';
  const outcome = planned ? ' What is planned for it will do.' : keep;
  const fix = planned || wire.isPart !== undefined ? undefined : planClass(wire, about);
  return [
    {
      rule: 'class-found',
      severity,
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} was found with insulation ${ratingWords(rating)}; it carries ${carriesWords(about)} and needs ${classWords(about.need)} (${about.need.basis}).${outcome}`,
      source: commonPractice,
      ...(fix ? { fix } : {}),
      ...(severity === 'danger' ? { caution: cautionAtVolts(about.stress.volts) } : {}),
      why: classReasoning(study, about, rating)
    }
  ];
}

/** New wire of the class needed. Not where the class is a lower bound only, or off the ladder. */
export function planClass(
  wire: Wire,
  { need, recommended }: WireStudy
): { words: string; edit: Edit } | undefined {
  if (!need || need.atLeast || need.beyondLadder || !recommended) return undefined;
  const { awg, stranding, plating } = recommended;
  const fields = {
    planned: {
      awg: wire.planned.awg ?? awg,
      stranding: wire.planned.stranding ?? stranding,
      plating: wire.planned.plating ?? plating,
      way: 'new wire',
      ratingV: need.requiredV,
      ratingKind: null,
      style: null
    }
  };
  const better =
    need.preferredV > need.requiredV ? ` (${formatVolts(need.preferredV)} by preference)` : '';
  return {
    words: `Plan new wire of the ${formatVolts(need.requiredV)} class${better}.`,
    edit: { kind: 'change-wire', args: { id: wire.id, fields } }
  };
}
