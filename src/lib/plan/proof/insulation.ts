// Insulation of single wires, both ends free, never above what the weakest part of it stands.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatVolts } from '#quantity/index.ts';
import { isReplaced, type Study, type WireStudy } from '#study/index.ts';
import type { TestRow, TestSheet } from './test-row.ts';

/** Steps of insulation testers, V. */
const testSteps = [50, 100, 250, 500];
/** What new insulation should show at the least, ohm. Common practice, no source. */
const leastOhm = 100e6;

/** Wires of a class that no bench tester reaches. */
const highClassV = 1000;

export function insulationSheet(study: Study): TestSheet {
  const rows = study.index.wires.flatMap((wire) => {
    const about = study.wires.get(wire.id);
    return about && isTested(wire, about) ? [rowOf(study, wire, about)] : [];
  });
  return {
    id: 'insulation',
    title: 'Insulation',
    before: [
      'Power off, plug pulled, everything discharged and measured.',
      'Both ends of the wire free: whatever it is joined to would be tested with it, and may break.',
      'Never above the weakest part: the wire itself, and the wires beside it in the bundle.',
      'Discharge the wire after each test.'
    ],
    limits: [
      'This does not prove high-voltage leads: no tester of the bench reaches their volts, and a recurring pulse is worse than dc.',
      'Old insulation that passes today may fail warm or damp.'
    ],
    record: ['tester and its volts', 'date'],
    rows
  };
}

const isTested = (wire: Wire, { isBare }: WireStudy): boolean =>
  !isBare &&
  wire.isPart === undefined &&
  wire.planned.way !== undefined &&
  wire.planned.way !== 'keep';

function rowOf(study: Study, wire: Wire, about: WireStudy): TestRow {
  const weakest = weakestOf(study, wire, about);
  const volts =
    weakest.volts === null ? null : testSteps.filter((step) => step <= (weakest.volts ?? 0)).at(-1);
  const isHigh = (about.need?.requiredV ?? Infinity) >= highClassV;
  const at =
    volts == null
      ? `no test voltage: ${weakest.words}`
      : `at ${formatVolts(volts)} (${weakest.words})`;
  return {
    id: `insulation ${wire.id}`,
    what: wire.number === '' ? 'wire without number' : `wire ${wire.number}`,
    where: `${study.index.labelOf(wire.from)} to ${study.index.labelOf(wire.to)}, to chassis and to its neighbours`,
    expected:
      volts == null
        ? null
        : {
            dimension: 'resistance',
            least: leastOhm,
            most: null,
            words: '100 MΩ at least',
            basis: 'common practice, no source'
          },
    words: volts == null ? at : `${at}: 100 MΩ at least`,
    doNotMeasure: volts == null,
    note: isHigh
      ? about.need === null || about.need.atLeast
        ? 'What it carries is not known in full: this does not prove it.'
        : 'This does not prove it: it is a high-voltage lead.'
      : null
  };
}

/** The lowest rating among the wire and those that lie with it; null where one of them is not known. */
function weakestOf(
  study: Study,
  wire: Wire,
  about: WireStudy
): { volts: number | null; words: string } {
  const own = ratingOf(wire, about);
  if (own === null) return { volts: null, words: 'its own rating is not known' };
  let weakest = { volts: own, words: `it is rated ${formatVolts(own)}` };
  for (const { wires } of study.bundlesOf.get(wire.id) ?? []) {
    for (const id of wires) {
      const mate = findElement(study.document.wires, id);
      const other = study.wires.get(id);
      if (!mate || !other || id === wire.id) continue;
      const volts = other.isBare ? Infinity : ratingOf(mate, other);
      if (volts === null)
        return { volts: null, words: `the rating of wire ${mate.number} beside it is not known` };
      if (volts < weakest.volts)
        weakest = { volts, words: `wire ${mate.number} beside it is rated ${formatVolts(volts)}` };
    }
  }
  return weakest;
}

/** Of what lies there, or will when the test is made. With a piece spliced in both lie there. */
function ratingOf(wire: Wire, { foundRating, plannedRating }: WireStudy): number | null {
  if (wire.planned.way === 'splice in')
    return foundRating && plannedRating ? Math.min(foundRating.volts, plannedRating.volts) : null;
  const isNew = isReplaced(wire) || wire.planned.way === 'new wire';
  return (isNew ? plannedRating : foundRating)?.volts ?? null;
}
