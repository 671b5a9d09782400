// What the plan proposes: shelf first, smallest that is enough, the person's choice before all.
import { applyEdit, type Edit } from '#document/index.ts';
import {
  buildCutList,
  buildPlan,
  buildShoppingList,
  chanceFrom,
  chooseEdit,
  foresee,
  takeOverEdit,
  type Choice,
  type Plan,
  type WirePlan
} from '#plan/index.ts';
import { shrunkWallMm } from '#plan/sleeving.ts';
import { cutSheet } from '#paperwork/sheets/plan-sheets.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';
import { buildTelevision } from '../demonstrations/television.ts';

const spool = {
  awg: 22,
  stranding: 'solid',
  plating: 'tinned',
  construction: 'hook-up wire'
} as const;
const v600 = { ...spool, style: 'UL 1015' };
const v300 = { ...spool, style: 'UL 1007' };

const planOf = (set: ChassisBuilder): Plan => buildPlan(buildStudy(set.build()));
const about = (plan: Plan, number: string, set: ChassisBuilder): WirePlan => {
  const wire = Object.values(set.build().wires).find((each) => each.number === number);
  const found = wire && plan.byWire.get(wire.id);
  if (!found) throw new Error(`no plan for wire ${number}`);
  return found;
};
/** Two strips with one wire between them, and whatever is on the shelf. */
const one = (
  wire: Parameters<ChassisBuilder['wire']>[3],
  shelf: (set: ChassisBuilder) => void = () => undefined
): WirePlan => {
  const set = chassis().strip('TS1', 4).strip('TS2', 4);
  set.wire('1', 'TS1-1', 'TS2-1', { tapedMm: 100, awg: 22, ...wire });
  shelf(set);
  return about(planOf(set), '1', set);
};

describe('a wire that has to be replaced', () => {
  const cracked = { dcV: 250, function: 'B+ 250 V', colour: 'red', condition: 'cracked' };

  it('comes from the shelf, the smallest rating that is enough', () => {
    const plan = one(cracked, (set) => {
      set.stock('1 kV', 9000, { ...spool, ratingV: 1000, ratingC: 105, colour: 'red' });
      set.stock('300 V', 9000, { ...v300, colour: 'red' });
      set.stock('600 V', 9000, { ...v600, colour: 'red' });
    });
    expect(plan).toMatchObject({ way: 'new wire', by: 'proposal', unmet: null, costs: [] });
    expect(plan.offer?.name).toBe('600 V');
    expect(plan.margin).toMatchObject({ ratingV: 600, stressV: 250, ratio: 2.4 });
  });

  it('is in the colour as found, and says so where it is not', () => {
    const both = one(cracked, (set) => {
      set.stock('black', 9000, { ...v600, colour: 'black' });
      set.stock('red', 9000, { ...v600, colour: 'red' });
    });
    expect(both.offer?.name).toBe('red');
    const other = one(cracked, (set) => set.stock('black', 9000, { ...v600, colour: 'black' }));
    expect(other.notes).toContain('black in place of red: mark both ends');
  });

  it('says why nothing will do, and names what to look for without a maker', () => {
    const plan = one(cracked, (set) => set.stock('thin', 9000, { ...v300, colour: 'red' }));
    expect(plan.unmet?.why).toMatch(/nearest is thin: rated 300 V, and 600 V is asked for/);
    expect(plan.unmet?.lookFor).toBe(
      'hook-up wire, 22 AWG solid tinned copper, insulation rated 600 V for dc at least, 50 °C at least (50 °C in the cabinet, assumed: add its own rise), red'
    );
  });

  it('is not cut from a piece that is too short', () => {
    const plan = one(cracked, (set) =>
      set.stock('short', 90, { ...v600, kind: 'offcut', colour: 'red' })
    );
    expect(plan.offer).toBeNull();
    expect(plan.unmet?.why).toMatch(/long enough/);
  });

  it('wants a rating that holds for its kind of voltage', () => {
    const pulsed = {
      pulseV: 3000,
      dcV: 250,
      function: 'horizontal yoke',
      condition: 'brittle'
    };
    const dcOnly = one(pulsed, (set) =>
      set.stock('dc lead', 9000, { ...spool, ratings: { dcV: 10_000 }, ratingC: 150 })
    );
    expect(dcOnly.unmet?.why).toMatch(/no rating for recurring pulses/);
    const pulse = one(pulsed, (set) =>
      set.stock('pulse lead', 9000, { ...spool, ratings: { pulseV: 5000 }, ratingC: 150 })
    );
    expect(pulse.offer?.name).toBe('pulse lead');
  });
});

describe('a wire of an earlier repair', () => {
  it('names what the service data says beside what was found', () => {
    const plan = one({
      dcV: 427,
      function: 'B+',
      origin: 'earlier repair',
      colour: 'blue',
      ratingV: 300,
      serviceData: { awg: 20, colour: 'red' }
    });
    expect(plan.why).toBe('the wire found is rated 300 V, which does not cover what is asked for');
    expect(plan.notes).toContain(
      'service data: red and 20 AWG; what was found is an earlier repair'
    );
  });
});

describe('what is not known', () => {
  it('never goes below the highest rail of its unit', () => {
    const set = chassis().strip('TS1', 4).strip('TS2', 4);
    set.wire('1', 'TS1-1', 'TS2-1', { dcV: 700, function: 'B+ 700 V', awg: 22 });
    set.wire('2', 'TS1-2', 'TS2-2', { awg: 22, condition: 'brittle', tapedMm: 90 });
    set.stock('600 V', 9000, v600);
    const plan = about(planOf(set), '2', set);
    expect(plan.want).toMatchObject({ ratingV: 1000, atLeast: true });
    expect(plan.offer).toBeNull();
    expect(plan.unmet?.why).toMatch(/highest rail there/);
  });

  it('does not ask a wire of declared low volts for the kilovolts of a pulse in its unit', () => {
    const set = chassis().strip('TS1', 6);
    set.wire('1', 'TS1-1', 'TS1-2', { pulseV: 5000, dcV: 0, function: 'sweep pulse' });
    set.wire('2', 'TS1-3', 'TS1-4', { dcV: 400, function: 'B+ 400 V' });
    set.wire('3', 'TS1-5', 'TS1-6', { acV: 117, amps: 1.2, awg: 18, condition: 'brittle' });
    // The highest rail there: 400 V x 1.25 = 500 V, which is the 600 V class.
    expect(about(planOf(set), '3', set).want).toMatchObject({ classV: 600, atLeast: true });
  });

  it('leaves a wire without length uncut, and says so', () => {
    const set = chassis().strip('TS1', 4).strip('TS2', 4);
    set.wire('1', 'TS1-1', 'TS2-1', { dcV: 250, awg: 22, condition: 'brittle' });
    set.stock('600 V', 9000, v600);
    const plan = planOf(set);
    expect(about(plan, '1', set).notes).toContain(
      'length not known: tape it before anything is cut'
    );
    const cuts = buildCutList(plan, { chance: chanceFrom(1) });
    const [said, ...rest] = cutSheet(buildStudy(set.build()), cuts).blocks;
    expect(JSON.stringify(said)).toContain('Nothing is cut from the shelf');
    expect(JSON.stringify(rest)).not.toContain('Cut from');
    expect(cuts).toMatchObject({
      cuts: [],
      lengthUnknown: [about(plan, '1', set).wire]
    });
  });
});

describe('a wire that is a part', () => {
  it('is kept, whatever lies on the shelf', () => {
    const plan = one({ isPart: 'resistance cord', condition: 'brittle', acV: 117 }, (set) =>
      set.stock('600 V', 9000, v600)
    );
    expect(plan).toMatchObject({ way: 'keep', offer: null, want: null });
    expect(plan.ways.find(({ way }) => way === 'new wire')).toMatchObject({ isOpen: false });
    expect(plan.why).toMatch(/hook-up wire must not take its place/);
  });
});

describe("the person's own choice", () => {
  it('stands, and what it costs is told', () => {
    const plan = one({
      dcV: 560,
      function: 'boosted B+',
      colour: 'red',
      planned: { way: 'new wire', style: 'UL 1015', awg: 22, colour: 'orange' }
    });
    expect(plan.by).toBe('person');
    expect(plan.margin?.ratio).toBeCloseTo(600 / 560, 6);
    expect(plan.costs.join()).toMatch(/rated 600 V, and 700 V is asked for/);
  });

  it('of a piece of the shelf is cut from that piece', () => {
    const set = chassis().strip('TS1', 4).strip('TS2', 4);
    set.stock('first', 9000, { ...v600, colour: 'red' });
    set.stock('second', 9000, { ...v600, colour: 'red' });
    const second = Object.values(set.build().shelf).find(({ name }) => name === 'second');
    if (!second) throw new Error('no second spool');
    set.wire('1', 'TS1-1', 'TS2-1', {
      dcV: 100,
      awg: 22,
      tapedMm: 100,
      planned: { way: 'new wire', stock: second.id }
    });
    const cuts = buildCutList(planOf(set), { chance: chanceFrom(1) }).cuts;
    expect(cuts.map(({ stock }) => stock.name)).toEqual(['second']);
  });

  it('to keep what does not cover the stress is told as well', () => {
    const plan = one({ dcV: 400, ratingV: 300, planned: { way: 'keep' } });
    expect(plan).toMatchObject({ way: 'keep', by: 'person' });
    expect(plan.costs.join()).toMatch(/rated 300 V, and 500 V is asked for/);
  });
});

describe('sleeves', () => {
  // Cross-section before and after is the same: a 3.2 mm sleeve (1.6 mm shrunk, wall 0.48) on 2.4 mm.
  it('grow thin where they cannot shrink all the way', () => {
    const wall = shrunkWallMm({ recoveredMm: 1.6, wallMm: 0.48 }, 2.4);
    const area = (inside: number, thick: number) => Math.PI * (inside + thick) * thick;
    expect(area(2.4, wall)).toBeCloseTo(area(1.6, 0.48), 9);
    expect(wall).toBeLessThan(0.48);
  });

  it('are open for low volts and for nothing at kilovolts', () => {
    const low = one({ dcV: 100, awg: 20, found: { awg: 20, stranding: 'stranded' } });
    expect(low.ways.find(({ way }) => way === 're-sleeve')).toMatchObject({ isOpen: true });
    const high = one({ dcV: 18_000, function: 'second anode' });
    for (const way of ['re-sleeve', 'splice in'])
      expect(high.ways.find((each) => each.way === way)).toMatchObject({ isOpen: false });
    const dark = one({});
    expect(dark.ways.find(({ way }) => way === 're-sleeve')).toMatchObject({ isOpen: false });
  });
});

describe('the television', () => {
  const study = buildStudy(buildTelevision());
  const plan = buildPlan(study);
  const list = buildCutList(plan, { chance: chanceFrom(1) });

  it('cuts no more of any piece than there is of it', () => {
    expect(list.unplaced).toEqual([]);
    expect(list.cuts.length).toBeGreaterThan(5);
    for (const { stock, pieces, leftMm } of list.cuts) {
      const used = pieces.reduce((sum, { mm }) => sum + mm, 0);
      expect(used + leftMm).toBeCloseTo(stock.lengthMm, 6);
    }
  });

  it('proposes nothing that falls short', () => {
    const proposed = plan.wires.filter(({ by, offer }) => by === 'proposal' && offer !== null);
    expect(proposed.length).toBeGreaterThan(10);
    expect(proposed.flatMap(({ costs }) => costs)).toEqual([]);
  });

  it('has nothing for the second anode, and says what to look for', () => {
    const anode = study.index.wires.find(({ number }) => number === '128');
    const own = plan.byWire.get(anode?.id ?? '');
    expect(own?.unmet?.lookFor).toMatch(/high-voltage lead.*rated 25 kV for dc at least/);
  });
});

describe('a piece that is spliced in', () => {
  const set = (pieceMm?: number) => {
    const own = chassis().strip('TS1', 4).strip('TS2', 4);
    return own.wire('1', 'TS1-1', 'TS2-1', {
      tapedMm: 300,
      awg: 22,
      dcV: 250,
      colour: 'red',
      planned: { way: 'splice in', ...(pieceMm === undefined ? {} : { pieceMm }) }
    });
  };

  it('is cut from the shelf as long as it was written down', () => {
    const own = set(80).stock('600 V', 9000, { ...v600, colour: 'red' });
    const plan = planOf(own);
    expect(about(plan, '1', own)).toMatchObject({ way: 'splice in', cutMm: 80, unmet: null });
    const { cuts } = buildCutList(plan, { chance: chanceFrom(1) });
    expect(cuts.map(({ pieces, leftMm }) => [pieces.map(({ mm }) => mm), leftMm])).toEqual([
      [[80], 8920]
    ]);
  });

  it('is as long as the wire until somebody says, and says so', () => {
    const own = set().stock('600 V', 9000, { ...v600, colour: 'red' });
    const plan = about(planOf(own), '1', own);
    expect(plan.cutMm).toBeGreaterThan(300);
    expect(plan.notes.join()).toMatch(/as long as the whole wire until the length/);
  });

  it('is bought where the shelf has none', () => {
    const own = set(80);
    const study = buildStudy(own.build());
    const plan = buildPlan(study);
    const cuts = buildCutList(plan, { chance: chanceFrom(1) });
    const { lines } = buildShoppingList(study, plan, cuts, chanceFrom(1));
    expect(lines.find(({ kind }) => kind === 'wire')).toMatchObject({ neededMm: 80, count: 1 });
  });
});

describe('choices', () => {
  const television = () => buildStudy(buildTelevision());
  const applied = (study: ReturnType<typeof television>, edit: Edit): Plan => {
    const result = applyEdit(study.document, edit);
    if (!result.ok) throw new Error(result.problem);
    return buildPlan(buildStudy(result.document));
  };

  it('taken over as proposed leave the plan as it was, and nothing is left to propose', () => {
    const study = television();
    const plan = buildPlan(study);
    const edit = takeOverEdit(study, plan);
    if (!edit) throw new Error('nothing to take over');
    const after = applied(study, edit);
    expect(after.wires.filter(({ by }) => by === 'proposal')).toEqual([]);
    for (const own of plan.wires) {
      const now = after.byWire.get(own.wire);
      expect([own.wire, now?.way]).toEqual([own.wire, own.way]);
      if (own.stockType) {
        expect([own.wire, now?.offer?.awg]).toEqual([own.wire, own.offer?.awg]);
        expect([own.wire, now?.costs]).toEqual([own.wire, own.costs]);
      }
    }
    expect(takeOverEdit(buildStudy(study.document), after)).toBeNull();
  });

  it('cost what was foreseen', () => {
    const study = television();
    const plan = buildPlan(study);
    const wire = study.index.wires.find(({ number }) => number === '38');
    const thin = plan.stockTypes.find(({ style }) => style === 'UL 1007') ?? plan.stockTypes[0];
    if (!wire || !thin) throw new Error('no such wire or stock');
    const choices: Choice[] = [
      { way: 'new wire', type: thin },
      { way: 're-sleeve', type: null },
      { way: 'keep', type: null }
    ];
    for (const choice of choices) {
      const ahead = foresee(study, plan, wire, choice);
      const after = applied(study, chooseEdit(study, plan, [wire.id], choice)).byWire.get(wire.id);
      expect(after).toMatchObject({ way: choice.way, by: 'person' });
      expect(ahead?.margin).toEqual(after?.margin);
      expect(ahead?.costs).toEqual(after?.costs);
    }
  });

  it('are taken back to what is proposed', () => {
    const study = television();
    const plan = buildPlan(study);
    const { wire, way } = plan.wires.find(({ by }) => by === 'proposal') ?? plan.wires[0] ?? {};
    if (wire === undefined) throw new Error('no wire');
    const chosen = applyEdit(
      study.document,
      chooseEdit(study, plan, [wire], { way: 're-sleeve', type: null })
    );
    if (!chosen.ok) throw new Error(chosen.problem);
    const back = applyEdit(chosen.document, chooseEdit(study, plan, [wire], null));
    if (!back.ok) throw new Error(back.problem);
    expect(buildPlan(buildStudy(back.document)).byWire.get(wire)).toMatchObject({
      way,
      by: 'proposal'
    });
  });
});
