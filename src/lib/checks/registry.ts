// All rules, in the order in which findings of one severity are listed.
import type { Rule } from './finding.ts';
import { carriesUnknown } from './rules/carries-unknown.ts';
import { classFound } from './rules/class-found.ts';
import { classPlanned } from './rules/class-planned.ts';
import { colourCode } from './rules/colour-code.ts';
import { criticalChanged } from './rules/critical-changed.ts';
import { dataDisagrees } from './rules/data-disagrees.ts';
import { endMisfit } from './rules/end-misfit.ts';
import { endUnknown } from './rules/end-unknown.ts';
import { insulationFailing } from './rules/insulation-failing.ts';
import { leadsMissing } from './rules/leads-missing.ts';
import { lengthMissing } from './rules/length-missing.ts';
import { lineMismatch } from './rules/line-mismatch.ts';
import { noGround } from './rules/no-ground.ts';
import { numberTwice } from './rules/number-twice.ts';
import { ratingKind } from './rules/rating-kind.ts';
import { ratingUnknown } from './rules/rating-unknown.ts';
import { referenceMissing } from './rules/reference-missing.ts';
import { shieldGround } from './rules/shield-ground.ts';
import { spliceBare } from './rules/splice-bare.ts';
import { stressPartial } from './rules/stress-partial.ts';
import { suppliesJoined } from './rules/supplies-joined.ts';
import { tiePin } from './rules/tie-pin.ts';
import { unshieldedAudio } from './rules/unshielded-audio.ts';
import { wireIsPart } from './rules/wire-is-part.ts';

export const rules: readonly Rule[] = [
  classFound,
  classPlanned,
  insulationFailing,
  noGround,
  spliceBare,
  suppliesJoined,
  wireIsPart,
  referenceMissing,
  numberTwice,
  criticalChanged,
  endMisfit,
  endUnknown,
  leadsMissing,
  ratingKind,
  ratingUnknown,
  stressPartial,
  carriesUnknown,
  dataDisagrees,
  tiePin,
  shieldGround,
  lineMismatch,
  unshieldedAudio,
  colourCode,
  lengthMissing
];

const ruleById: ReadonlyMap<string, Rule> = new Map(rules.map((rule) => [rule.id, rule]));

export const findRule = (id: string): Rule | undefined => ruleById.get(id);

/** How a rule decides and what would make it pass, in plain text; undefined for no such rule. */
export function explainRule(id: string): string | undefined {
  const rule = ruleById.get(id);
  if (!rule) return undefined;
  return `${rule.title} (${rule.id}, at worst ${rule.severity}).\n${rule.explain}\nSource: ${rule.source}.`;
}
