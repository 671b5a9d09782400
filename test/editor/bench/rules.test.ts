import { describe, expect, it } from 'vitest';
import { explainRule, rules, severities } from '#checks/index.ts';
import { buildRuleGroups, splitExplanation } from '#editor/bench/rules/rule-entries.ts';

describe('the list of rules', () => {
  const groups = buildRuleGroups();

  it('holds every rule of the registry once, worst first', () => {
    const ids = groups.flatMap(({ entries }) => entries.map(({ rule }) => rule.id));
    expect([...ids].sort()).toEqual(rules.map(({ id }) => id).sort());
    const order = groups.map(({ severity }) => severities.indexOf(severity));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('keeps every sentence of an explanation', () => {
    for (const { entries } of groups)
      for (const { rule, decides, passes } of entries) {
        expect(decides, rule.id).not.toBe('');
        expect(passes, `${rule.id} says what makes it pass`).not.toBe('');
        const words = (text: string) => text.split(/\s+/).filter(Boolean).sort();
        expect(words(`${decides} ${passes}`), rule.id).toEqual(words(rule.explain));
        expect(explainRule(rule.id)).toContain(rule.explain);
      }
  });

  it('tells what makes a rule pass apart', () => {
    expect(
      splitExplanation(
        'A wire of UL 1015 is 1.5 mm thick. It passes once it is out. Leads of grids are a note.'
      )
    ).toEqual({
      decides: 'A wire of UL 1015 is 1.5 mm thick. Leads of grids are a note.',
      passes: 'It passes once it is out.'
    });
    expect(splitExplanation('Looks at shields.').passes).toBe('');
  });
});
