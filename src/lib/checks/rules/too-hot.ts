// Insulation that does not stand the heat of the place where it ends.
import type { Wire } from '#document/index.ts';
import { formatCelsius } from '#quantity/index.ts';
import { conductorPlanned, type Conductor, type Study, type WireStudy } from '#study/index.ts';
import { celsiusInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { hotAt } from '../hot-places.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { isFoundInPlace } from '../shortfall.ts';
import { commonPractice, wiresAsSubject } from '../words.ts';

export const tooHot: Rule = {
  id: 'too-hot',
  severity: 'caution',
  title: 'Insulation rated below the heat around it',
  source: commonPractice,
  explain:
    'The temperature that insulation is rated for, as marked or by its style, is held against that of its surroundings: the hot zone of the policy (85 °C where not said) where it ends at an output tube, a damper, a rectifier or at a lug with a resistor of 5 W and more, the ambient of the policy (50 °C) elsewhere. What is planned counts, else what lies there. Insulation of which no rating is known is not judged. It passes with insulation of a higher rating, or with the end moved away from the heat.',
  ...inPieces(eachWire(checkWire))
};

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  if (!about || wire.isPart !== undefined) return [];
  const conductor = conductorToJudge(wire, about);
  const ratingC = conductor?.ratingC ?? null;
  if (!conductor || ratingC === null) return [];
  const { policy, index } = study;
  // Cheap things first: most wire stands any place of a chassis.
  if (ratingC >= Math.max(policy.hotZoneC, policy.ambientC)) return [];
  const hot = [wire.from, wire.to]
    .map((end) => index.findAt(end))
    .map((entry) => (entry ? hotAt(study, entry) : null))
    .find((words) => words !== null);
  const placeC = hot === undefined ? policy.ambientC : Math.max(policy.hotZoneC, policy.ambientC);
  if (ratingC >= placeC) return [];
  const where = hot === undefined ? 'the cabinet' : `the place at ${hot}`;
  const verb = conductor.which === 'planned' ? 'planned' : 'found';
  const betterC = [105, 125, 150, 200].find((celsius) => celsius >= placeC);
  return [
    {
      rule: 'too-hot',
      severity: 'caution',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} was ${verb} with insulation rated ${formatCelsius(ratingC)}; ${where} is reckoned at ${formatCelsius(placeC)}.`,
      source: commonPractice,
      fix: fixOf(wire, about, betterC),
      why: {
        sum: null,
        inputs: [
          celsiusInput(
            'Insulation',
            ratingC,
            conductor.which === 'planned' ? 'as planned' : 'as found'
          ),
          celsiusInput(
            'Surroundings',
            placeC,
            hot === undefined ? 'ambient of the policy' : 'hot zone of the policy'
          )
        ],
        outcome: `${formatCelsius(ratingC)} is below ${formatCelsius(placeC)}.`,
        passes: 'with insulation rated for the place, or with another place.'
      }
    }
  ];
}

/** New wire that is planned; else the old, as long as it lies there. */
function conductorToJudge(wire: Wire, { conductor }: WireStudy): Conductor | null {
  if (wire.planned.way === 'new wire') return conductorPlanned(wire);
  return isFoundInPlace(wire) ? conductor : null;
}

function fixOf(
  wire: Wire,
  { recommended }: WireStudy,
  betterC: number | undefined
): NonNullable<Finding['fix']> {
  if (betterC === undefined || !recommended)
    return { words: 'Move it away from the heat, or sleeve it.' };
  return {
    words: `Plan new wire of ${formatCelsius(betterC)}.`,
    edit: {
      kind: 'change-wire',
      args: { id: wire.id, fields: { planned: { way: 'new wire', ratingC: betterC } } }
    }
  };
}
