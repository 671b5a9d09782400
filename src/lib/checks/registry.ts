// All rules, in the order in which findings of one severity are listed.
import type { Rule } from './finding.ts';
import { anodeResistorRule } from './rules/anode-resistor.ts';
import { bendTight } from './rules/bend-tight.ts';
import { carriesUnknown } from './rules/carries-unknown.ts';
import { chargeKept } from './rules/charge-kept.ts';
import { classFound } from './rules/class-found.ts';
import { classPlanned } from './rules/class-planned.ts';
import { colourCode } from './rules/colour-code.ts';
import { criticalChanged } from './rules/critical-changed.ts';
import { dataDisagrees } from './rules/data-disagrees.ts';
import { endMisfit } from './rules/end-misfit.ts';
import { endUnknown } from './rules/end-unknown.ts';
import { endsAlike } from './rules/ends-alike.ts';
import { heaterCathode } from './rules/heater-cathode.ts';
import { heaterDrop } from './rules/heater-drop.ts';
import { heaterString } from './rules/heater-string.ts';
import { heaterUntwisted } from './rules/heater-untwisted.ts';
import { hotChassis } from './rules/hot-chassis.ts';
import { hvNear } from './rules/hv-near.ts';
import { insulationFailing } from './rules/insulation-failing.ts';
import { islandFloating } from './rules/island-floating.ts';
import { leadsMissing } from './rules/leads-missing.ts';
import { lengthMissing } from './rules/length-missing.ts';
import { lineMismatch } from './rules/line-mismatch.ts';
import { mixedBundle } from './rules/mixed-bundle.ts';
import { noGround } from './rules/no-ground.ts';
import { noisyNeighbour } from './rules/noisy-neighbour.ts';
import { numberTwice } from './rules/number-twice.ts';
import { overAmpacity } from './rules/over-ampacity.ts';
import { photoUnscaled } from './rules/photo-unscaled.ts';
import { ratingKind } from './rules/rating-kind.ts';
import { ratingUnknown } from './rules/rating-unknown.ts';
import { referenceMissing } from './rules/reference-missing.ts';
import { shieldGround } from './rules/shield-ground.ts';
import { solvedDisagrees } from './rules/solved-disagrees.ts';
import { spliceBare } from './rules/splice-bare.ts';
import { stressPartial } from './rules/stress-partial.ts';
import { suppliesJoined } from './rules/supplies-joined.ts';
import { supplyShorted } from './rules/supply-shorted.ts';
import { supportSize } from './rules/support-size.ts';
import { tiePin } from './rules/tie-pin.ts';
import { tooHot } from './rules/too-hot.ts';
import { unshieldedAudio } from './rules/unshielded-audio.ts';
import { wireIsPart } from './rules/wire-is-part.ts';
import { workOrder } from './rules/work-order.ts';

export const rules: readonly Rule[] = [
  classFound,
  classPlanned,
  hotChassis,
  hvNear,
  insulationFailing,
  noGround,
  spliceBare,
  supplyShorted,
  suppliesJoined,
  overAmpacity,
  heaterString,
  heaterDrop,
  heaterCathode,
  wireIsPart,
  supportSize,
  referenceMissing,
  numberTwice,
  criticalChanged,
  endMisfit,
  endsAlike,
  endUnknown,
  leadsMissing,
  chargeKept,
  solvedDisagrees,
  islandFloating,
  ratingKind,
  ratingUnknown,
  stressPartial,
  carriesUnknown,
  mixedBundle,
  tooHot,
  dataDisagrees,
  tiePin,
  shieldGround,
  lineMismatch,
  bendTight,
  workOrder,
  unshieldedAudio,
  noisyNeighbour,
  heaterUntwisted,
  anodeResistorRule,
  colourCode,
  lengthMissing,
  photoUnscaled
];

const ruleById: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.id, rule]));

export const findRule = (id: string): Rule | undefined => ruleById.get(id);

/** How a rule decides and what would make it pass, in plain text; undefined for no such rule. */
export function explainRule(id: string): string | undefined {
  const rule = ruleById.get(id);
  if (!rule) return undefined;
  return `${rule.title} (${rule.id}, at worst ${rule.severity}).\n${rule.explain}\nSource: ${rule.source}.`;
}
