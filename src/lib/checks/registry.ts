// All rules, in the order in which findings of one severity are listed.
import type { Rule } from './finding.ts';
import { carriesUnknown } from './rules/carries-unknown.ts';
import { classFound } from './rules/class-found.ts';
import { classPlanned } from './rules/class-planned.ts';
import { colourCode } from './rules/colour-code.ts';
import { endUnknown } from './rules/end-unknown.ts';
import { lengthMissing } from './rules/length-missing.ts';
import { lineMismatch } from './rules/line-mismatch.ts';
import { numberTwice } from './rules/number-twice.ts';
import { ratingUnknown } from './rules/rating-unknown.ts';
import { referenceMissing } from './rules/reference-missing.ts';
import { shieldGround } from './rules/shield-ground.ts';
import { spliceBare } from './rules/splice-bare.ts';
import { stressPartial } from './rules/stress-partial.ts';
import { suppliesJoined } from './rules/supplies-joined.ts';

export const rules: readonly Rule[] = [
  classFound,
  classPlanned,
  spliceBare,
  suppliesJoined,
  referenceMissing,
  numberTwice,
  endUnknown,
  ratingUnknown,
  stressPartial,
  carriesUnknown,
  shieldGround,
  lineMismatch,
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
