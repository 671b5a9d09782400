import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChassisDocument, Wire } from '#document/index.ts';
import { applyEdit } from '#document/apply-edit.ts';
import { emptyHistory, pushEdit, undo } from '#document/history.ts';
import { saveDocument } from '#document/index.ts';
import { autoRoutesEdit } from '#editor/tools/dress/route-wires.ts';
import { buildStudy, type Study } from '#study/index.ts';
import { companyOf, isHeldFast, planRoutes } from '#study/plan-routes.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { chassis } from '../helpers/chassis.ts';

const strips = 6;
const lugs = 5;

type More = Partial<
  Pick<Wire, 'carries' | 'critical' | 'isPart' | 'state'> & { hand: readonly number[] }
>;

const spot = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 200 }));
/** Most wires are free to be routed; some have one reason not to be. */
const more: fc.Arbitrary<More> = fc
  .tuple(
    fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom({}, { dcV: 6 }, { dcV: 285 }) },
      fc.constantFrom({ pulseV: 2400 }, { pulseV: 2400 }, { dcV: 18_000 })
    ),
    fc.oneof(
      { weight: 6, arbitrary: fc.constant<More>({}) },
      fc.array(fc.nat(4), { maxLength: 3 }).map((hand): More => ({ hand })),
      fc.constantFrom<More>(
        ...[{ keepLength: true }, { keepPlace: true }, { keepShort: true }].map((critical) => ({
          critical
        })),
        { critical: { keepPlace: false } },
        { isPart: 'resistance cord' },
        { state: 'fitted' }
      )
    )
  )
  .map(([carries, fields]) => ({ carries, ...fields }));
const end = fc.tuple(fc.nat(strips - 1), fc.nat(lugs - 1));

/** A chassis with lugs, supports and wires anywhere, some of them placed by hand or to be kept. */
const wired: fc.Arbitrary<ChassisDocument> = fc
  .record({
    parts: fc.array(spot, { minLength: strips, maxLength: strips }),
    supports: fc.array(spot, { minLength: 5, maxLength: 5 }),
    wires: fc.array(fc.tuple(end, end, more), { minLength: 1, maxLength: 16 })
  })
  .map(({ parts, supports, wires }) => {
    const build = chassis().unit('Main');
    parts.forEach((at, n) => build.strip(`TS${n + 1}`, lugs, { at }));
    supports.forEach((at, n) => build.support(`clamp ${n + 1}`, 'clamp', at));
    wires.forEach(([[a, i], [b, j]], n) =>
      build.wire(String(n + 1), `TS${a + 1}-${i + 1}`, `TS${b + 1}-${j + 1}`)
    );
    const document = build.build();
    const ids = Object.keys(document.supports);
    Object.values(document.wires).forEach((wire, n) => {
      const { hand, ...fields } = wires[n]?.[2] ?? {};
      const route = hand && { supports: hand.flatMap((at) => ids[at] ?? []), by: 'hand' as const };
      document.wires[wire.id] = { ...wire, ...fields, ...(route ? { route } : {}) };
    });
    return document;
  });

/** Which companies meet at each support, on the routes that `wires` have. */
const companies = (study: Study, wires: readonly Wire[]): ReadonlyMap<string, Set<string>> => {
  const at = new Map<string, Set<string>>();
  for (const { id, route } of wires) {
    for (const support of route?.supports ?? []) {
      at.set(support, (at.get(support) ?? new Set()).add(companyOf(study, id)));
    }
  }
  return at;
};

describe('routes that are planned by themselves', () => {
  const options = { seed: 4406, numRuns: 60 };

  it('never touch what a hand placed nor what must stay', () => {
    let routed = 0;
    fc.assert(
      fc.property(wired, (document) => {
        const planned = autoRoutesEdit({ study: buildStudy(document) });
        if (!planned) return;
        const after = applyEdit(document, planned.edit);
        if (!after.ok) throw new Error(after.problem);
        routed += planned.routes.length;
        for (const wire of Object.values(document.wires)) {
          const { route, ...rest } = after.document.wires[wire.id] as Wire;
          const { route: before, ...own } = wire;
          expect(rest).toEqual(own);
          if (isHeldFast(wire)) expect(route).toEqual(before);
          else if (route) expect(route.by).toBe('layout');
        }
      }),
      options
    );
    expect(routed).toBeGreaterThan(60);
  });

  it('are one step, and undo brings back the same bytes', () => {
    fc.assert(
      fc.property(wired, (document) => {
        const planned = autoRoutesEdit({ study: buildStudy(document) });
        if (!planned) return;
        const applied = applyEdit(document, planned.edit);
        if (!applied.ok) throw new Error(applied.problem);
        const history = pushEdit(emptyHistory, planned.edit, applied, 0);
        expect(history.past).toHaveLength(1);
        const back = undo(applied.document, history);
        expect(saveDocument(back!.document)).toBe(saveDocument(document));
      }),
      options
    );
  });

  it('bring high voltages into no support that had none of them beside others', () => {
    fc.assert(
      fc.property(wired, (document) => {
        const planned = autoRoutesEdit({ study: buildStudy(document) });
        if (!planned) return;
        const after = applyEdit(document, planned.edit);
        if (!after.ok) throw new Error(after.problem);
        const study = buildStudy(document);
        const changed = new Set(planned.routes.map(({ wire }) => wire));
        const kept = study.index.wires.filter(({ id }) => !changed.has(id));
        const before = companies(study, kept);
        for (const [id, there] of companies(study, Object.values(after.document.wires))) {
          if ((before.get(id)?.size ?? 0) < 2) expect([id, there.size]).toEqual([id, 1]);
        }
        for (const { wire, supports } of planned.routes) {
          if (companyOf(study, wire) === 'alone') expect(supports).toEqual([]);
        }
      }),
      options
    );
  });

  it('change nothing when asked again, and never throw', () => {
    fc.assert(
      fc.property(fc.oneof(wired, arbitraryDocument()), (document) => {
        const study = buildStudy(document);
        const planned = autoRoutesEdit({ study });
        if (!planned) return;
        const after = applyEdit(document, planned.edit);
        if (!after.ok) throw new Error(after.problem);
        expect(planRoutes(buildStudy(after.document))).toEqual([]);
      }),
      { seed: 4407, numRuns: 60 }
    );
  });
});

describe('where a route goes', () => {
  const row = () =>
    chassis()
      .unit('Main')
      .strip('TS1', 3, { at: [20, 40] })
      .strip('TS2', 3, { at: [220, 40] })
      .support('clamp 1', 'clamp', [60, 60])
      .support('clamp 2', 'clamp', [120, 60])
      .support('clamp 3', 'clamp', [180, 60])
      .support('far away', 'clamp', [120, 600]);

  const namesOf = (document: ChassisDocument) =>
    Object.fromEntries(
      planRoutes(buildStudy(document)).map(({ wire, supports }) => [
        document.wires[wire]?.number,
        supports.map((id) => document.supports[id]?.name)
      ])
    );

  it('takes the supports on the way in order and none that is out of the way', () => {
    const document = row().wire('1', 'TS1-3', 'TS2-1').wire('2', 'TS2-2', 'TS1-2').build();
    const there = ['clamp 1', 'clamp 2', 'clamp 3'];
    expect(namesOf(document)).toEqual({ '1': there, '2': there.toReversed() });
  });

  it('leaves a short lead straight', () => {
    const document = row().wire('1', 'TS1-1', 'TS1-3').build();
    expect(namesOf(document)).toEqual({});
  });

  it('keeps pulses out of the supports of ordinary wire, and many kilovolts out of all', () => {
    const document = row()
      .wire('1', 'TS1-1', 'TS2-1', { dcV: 12, route: ['clamp 2'] })
      .wire('2', 'TS1-2', 'TS2-2', { pulseV: 2400 })
      .wire('3', 'TS1-3', 'TS2-3', { dcV: 18_000 })
      .build();
    const routes = namesOf(document);
    expect(routes['2']).not.toContain('clamp 2');
    expect(routes['3']).toBeUndefined();
    expect(routes['1']).toBeUndefined();
  });

  it('makes the wire longer by the way it goes', () => {
    const document = row().wire('1', 'TS1-3', 'TS2-1').build();
    const study = buildStudy(document);
    const applied = applyEdit(document, autoRoutesEdit({ study })!.edit);
    if (!applied.ok) throw new Error(applied.problem);
    const [id = ''] = Object.keys(document.wires);
    const before = study.wires.get(id)?.length?.mm ?? 0;
    const after = buildStudy(applied.document).wires.get(id)?.length?.mm ?? 0;
    // From (29.5, 40) by (60, 60) and (180, 60) to (210.5, 40).
    expect(before).toBeCloseTo(181, 6);
    expect(after).toBeCloseTo(120 + 2 * Math.hypot(30.5, 20), 6);
  });
});
