import { describe, expect, it } from 'vitest';
import { applyEdit, defaultPolicy, policySchema, type ChassisDocument } from '#document/index.ts';
import { policyGroups, type PolicyItem, type PolicyKey } from '#editor/dialogs/policy-items.ts';
import { policyOf } from '#study/policy-of.ts';
import { chassis } from '../helpers/chassis.ts';

const items = policyGroups.flatMap((group) => group.items);
const item = (key: PolicyKey): PolicyItem => items.find((one) => one.key === key)!;
const start = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .build();

const typed = (key: PolicyKey, text: string, document = start): ChassisDocument => {
  const reading = item(key).read(text);
  if (!reading.ok) throw new Error(reading.why);
  const applied = applyEdit(document, reading.edit);
  if (!applied.ok) throw new Error(applied.problem);
  return applied.document;
};

describe('the policy as it is typed', () => {
  it('has an item for every figure of the policy', () => {
    expect(items.map(({ key }) => key).sort()).toEqual(Object.keys(policySchema.shape).sort());
  });

  it.each([
    ['marginRequired', '1.4', 1.4],
    ['supplyFloorV', '1kV', 1000],
    ['highLine', '15 %', 0.15],
    ['highLine', '15', 0.15],
    ['heaterLow', '-10 %', -0.1],
    ['ambientC', '60', 60],
    ['ambientC', '140 F', 60],
    ['slackMm', '1/2 in', 12.7],
    ['defaultAwg', '20 AWG', 20],
    ['ladderV', '300, 600; 1 kV', [300, 600, 1000]],
    ['ampacityBasis', '700 cmil', '700 cmil']
  ] as const)('%s: %s', (key, text, value) => {
    const given = policyOf(typed(key, text))[key];
    if (typeof value === 'number') expect(given).toBeCloseTo(value, 9);
    else expect(given).toEqual(value);
  });

  it('reads again what it shows, for every item', () => {
    for (const one of items) {
      const shown = one.show(defaultPolicy);
      expect(policyOf(typed(one.key, shown))[one.key], one.key).toEqual(defaultPolicy[one.key]);
    }
  });

  it('stores only what differs, and an empty field goes back to the default', () => {
    const changed = typed('supplyFloorV', '1000 V');
    expect(changed.policy).toEqual({ supplyFloorV: 1000 });
    expect(typed('supplyFloorV', '600 V', changed).policy).toEqual({});
    expect(typed('supplyFloorV', '  ', changed).policy).toEqual({});
  });

  it.each([
    ['ladderV', '600, 300', /rise/],
    ['ladderV', ',,,', /one class at least/],
    ['marginRequired', '0.5', /below 1$/],
    ['highLine', 'a lot', /percentage/],
    ['highLine', '80 %', /above 50 %/],
    ['heaterLow', '5 %', /above 0 %/],
    ['supplyFloorV', '20 mm', /voltage/],
    ['roundUpMm', '0', /below 0.1 mm/]
  ] as const)('%s: %s is refused, with why', (key, text, why) => {
    expect(item(key).read(text)).toEqual({ ok: false, why: expect.stringMatching(why) });
  });
});
