// The study after an edit, made from the one before, is the study that one would make from nothing: after
// any sequence of edits and undos, on any document.
import { makeChecker, rules, runChecks, type Finding } from '#checks/index.ts';
import {
  applyEdit,
  emptyHistory,
  pushEdit,
  redo,
  undo,
  type ChassisDocument
} from '#document/index.ts';
import { buildStudy, updateStudy, type Study } from '#study/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildRadio } from '../demonstrations/radio.ts';
import { buildTelevision } from '../demonstrations/television.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { arbitraryStudyEdit } from '../helpers/study-edits.ts';
import type { EditPlan } from '../helpers/arbitrary-edit.ts';

/** All that a study says, as plain data, and what the rules say of it. */
const saysOf = (study: Study, findings: readonly Finding[] = runChecks(study)) => ({
  policy: study.policy,
  wires: [...study.wires],
  order: study.index.wires.map(({ id }) => id),
  labels: study.index.wires.map(({ from, to }) => [
    study.index.labelOf(from),
    study.index.labelOf(to)
  ]),
  terminals: study.index.terminals.map(({ key, number }) => [key, number]),
  wiresAt: [...study.index.wiresAt].map(([key, wires]) => [key, wires.map(({ id }) => id)]).sort(),
  leadsOn: [...study.index.leadsOn].map(([key, entries]) => [
    key,
    entries.map((entry) => entry.key)
  ]),
  nets: [...study.nets],
  netOf: [...study.netOf].sort(),
  points: [...study.pointOf],
  chassis: study.chassisPoint,
  bundles: study.bundles,
  bundlesOf: [...study.bundlesOf],
  elements: study.elements.map(({ id, from, to, fromPoint, toPoint }) => [
    id,
    from.id,
    to.id,
    fromPoint,
    toPoint
  ]),
  states: study.elements.map((element) => study.network.stateOf(element)),
  volts: study.index.terminals.map(({ key }) => study.network.voltsAt(key)),
  disagreements: study.network.disagreements,
  shorted: study.network.shorted.map(({ element, against }) => [element.id, against?.id]),
  floating: study.network.floating.map(({ sources, ...rest }) => ({
    ...rest,
    sources: sources.map(({ id }) => id)
  })),
  starved: study.network.starved.map(({ loads, ...rest }) => ({
    ...rest,
    loads: loads.map(({ id }) => id)
  })),
  findings
});

/** What is shared with an earlier study cannot be shared with a copy of the document. */
const fresh = (document: ChassisDocument): Study => buildStudy(structuredClone(document));

/** A step: an edit, or one back, or one on again. */
type Step = EditPlan | 'undo' | 'redo';
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 5, arbitrary: arbitraryStudyEdit },
  { weight: 2, arbitrary: fc.constant('undo' as const) },
  { weight: 1, arbitrary: fc.constant('redo' as const) }
);

/** Follows the steps; calls back with each document, the study that was led on to it and the findings. */
const follow = (
  start: ChassisDocument,
  steps: readonly Step[],
  look: (study: Study, findings: readonly Finding[], document: ChassisDocument) => void
): void => {
  let document = start;
  let history = emptyHistory;
  let study = buildStudy(document);
  const check = makeChecker();
  check(study);
  for (const next of steps) {
    if (next === 'undo' || next === 'redo') {
      const moved = next === 'undo' ? undo(document, history) : redo(document, history);
      if (!moved) continue;
      ({ document, history } = moved);
    } else {
      const edit = next(document);
      const applied = edit && applyEdit(document, edit);
      if (!edit || !applied?.ok) continue;
      history = pushEdit(history, edit, applied, history.past.length * 10_000);
      document = applied.document;
    }
    study = updateStudy(study, document);
    look(study, check(study), document);
  }
};

describe('a study led on from edit to edit', () => {
  it('says of any document what a new one says', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        arbitraryDocument(),
        fc.array(step, { minLength: 1, maxLength: 8 }),
        (document, steps) => {
          follow(document, steps, (study, findings, now) => {
            looked++;
            expect(saysOf(study, findings)).toEqual(saysOf(fresh(now)));
          });
        }
      ),
      { seed: 77_001, numRuns: 60 }
    );
    // As many steps as that led somewhere.
    expect(looked).toBeGreaterThan(120);
  }, 60_000);

  it.each([
    ['television', buildTelevision, 12],
    ['radio', buildRadio, 20],
    ['generated set', () => generateChassis(120), 8]
  ])(
    'says of the %s what a new one says',
    (_name, build, runs) => {
      const document = build();
      fc.assert(
        fc.property(fc.array(step, { minLength: 2, maxLength: 6 }), (steps) => {
          follow(document, steps, (study, findings, now) => {
            expect(saysOf(study, findings)).toEqual(saysOf(fresh(now)));
          });
        }),
        { seed: 77_002, numRuns: runs }
      );
    },
    60_000
  );
});

describe('findings led on from edit to edit', () => {
  it('are the very same objects where the edit touched nothing that the rule says it looks at', () => {
    const document = buildTelevision();
    const check = makeChecker();
    const before = buildStudy(document);
    const first = check(before);
    const applied = applyEdit(document, {
      kind: 'change-wire',
      args: { id: 'w38', fields: { found: { colour: 'violet' } } }
    });
    if (!applied.ok) throw new Error(applied.problem);
    const says = rules.filter(({ pieces }) =>
      pieces?.every((piece) => piece.each !== 'chassis' || piece.reads)
    );
    const saying = new Set(says.map(({ id }) => id));
    const untouched = check(updateStudy(before, applied.document)).filter(
      ({ rule, at }) => saying.has(rule) && at.every(({ id }) => id !== 'w38')
    );
    expect(untouched.length).toBeGreaterThan(4);
    for (const finding of untouched) expect(first).toContain(finding);
  });
});

describe('what an edit does not touch', () => {
  it('is the very same object as before', () => {
    const before = buildStudy(buildTelevision());
    const applied = applyEdit(before.document, {
      kind: 'change-wire',
      args: { id: 'w38', fields: { found: { colour: 'green' } } }
    });
    if (!applied.ok) throw new Error(applied.problem);
    const after = updateStudy(before, applied.document);
    const changed = [...after.wires].filter(([id, study]) => before.wires.get(id) !== study);
    expect(changed.map(([id]) => id)).toEqual(['w38']);
    expect([...after.nets].every(([id, net]) => before.nets.get(id) === net)).toBe(true);
    expect(after.netOf).toBe(before.netOf);
    expect(after.bundles).toBe(before.bundles);
  });

  it('of a study that is asked again for the same document is the study itself', () => {
    const before = buildStudy(buildRadio());
    expect(updateStudy(before, before.document)).toBe(before);
  });

  it('reaches as far as the volts that changed', () => {
    const before = buildStudy(buildTelevision());
    const applied = applyEdit(before.document, {
      kind: 'change-wire',
      args: { id: 'w113', fields: { carries: { dcV: 170 } } }
    });
    if (!applied.ok) throw new Error(applied.problem);
    const after = updateStudy(before, applied.document);
    const changed = [...after.wires].filter(([id, study]) => before.wires.get(id) !== study);
    expect(changed.map(([id]) => id)).toEqual(['w113']);
  });
});
