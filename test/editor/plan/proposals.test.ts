// Going through the proposals: what is shown, what one decision is made for, and what it costs them all.
import { choiceCost } from '#editor/plan/choice-cost.ts';
import {
  isInView,
  marginWords,
  needsLook,
  planSummary,
  proposalWords,
  scopesOf,
  stockInTurn,
  views
} from '#editor/plan/proposal-list.ts';
import { buildPlan } from '#plan/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../../demonstrations/television.ts';

const study = buildStudy(buildTelevision());
const plan = buildPlan(study);
const wire = (number: string) => {
  const found = study.index.wires.find((each) => each.number === number);
  if (!found) throw new Error(`no wire ${number}`);
  return found;
};
const of = (number: string) => {
  const own = plan.byWire.get(wire(number).id);
  if (!own) throw new Error(`no plan for ${number}`);
  return own;
};

describe('the list', () => {
  it('shows each wire in all, and done ones nowhere else', () => {
    for (const own of plan.wires) {
      const shown = views.filter((view) => isInView(own, view));
      expect(shown).toContain('all');
      expect(shown.length > 1).toBe(own.by !== 'done');
    }
    expect(planSummary(plan)).toBe('36 to do, 90 kept, 3 done');
  });

  it('has what falls short and what cannot be met among those to look at', () => {
    expect(needsLook(of('130'))).toBe(true);
    expect(of('128').unmet).not.toBeNull();
    expect(needsLook(of('128'))).toBe(true);
    expect(needsLook(of('38'))).toBe(false);
    expect(proposalWords(of('128'))).toBe('new wire: to buy');
  });

  it('never gives a margin that is not known a figure', () => {
    for (const own of plan.wires)
      if (own.margin?.ratio === null && own.margin.stressV !== 0)
        expect(marginWords(own)).toBe('not known');
  });
});

describe('a decision', () => {
  it('is made for one wire, its class, or those that are ticked', () => {
    const ticked = [wire('43').id, wire('44').id];
    const [one, ofClass, chosen] = scopesOf(study, plan, wire('38'), ticked);
    expect(one?.wires).toEqual([wire('38').id]);
    expect(ofClass?.words).toMatch(/to do of the 600 V class$/);
    for (const id of ofClass?.wires ?? []) expect(plan.byWire.get(id)?.want?.classV).toBe(600);
    expect(chosen).toMatchObject({ words: '2 ticked wires', wires: ticked });
  });

  it('is never made for a wire that is a part along with others', () => {
    const part = study.index.wires.find(({ isPart }) => isPart !== undefined);
    if (!part) throw new Error('no wire is a part');
    const scopes = scopesOf(study, plan, wire('38'), [part.id, wire('43').id]);
    for (const { wires } of scopes) expect(wires).not.toContain(part.id);
  });

  it('tells the least margin of all that it is made for, and what falls short', () => {
    const wires = ['38', '43'].map((number) => wire(number).id);
    const cost = choiceCost(study, plan, wires, { way: 'keep', type: null }, {});
    expect(cost[0]?.words).toBe('Least margin 0.69 times; now 1.38 times.');
    expect(cost.filter(({ isBad }) => isBad).map(({ words }) => words)).toEqual([
      expect.stringMatching(/^Wire 38: kept: rated 300 V/)
    ]);
  });
});

describe('the shelf for one wire', () => {
  it('has what the plan takes first, then what falls least short', () => {
    const taken = of('38').stockType;
    const shortfalls = (type: { readonly name: string }) => type.name.length;
    const inTurn = stockInTurn(plan.stockTypes, shortfalls, taken);
    expect(inTurn[0]).toBe(taken);
    const rest = inTurn.slice(1).map(shortfalls);
    expect(rest).toEqual([...rest].sort((a, b) => a - b));
  });
});
