// The wire schedule: one row a wire, in the order of the document, with all that is needed to
// cut, fit and check it. Every form of the schedule (CSV, JSON, print, grid) is made from these rows.
import type { Finding } from '#checks/index.ts';
import type { Terminal, Wire, WireEnd } from '#document/index.ts';
import { formatInches, roundSignificant } from '#quantity/index.ts';
import type { Amount, Study } from '#study/index.ts';
import { unitNamesOf } from '#study/unit-names.ts';

/** A row of the schedule. Numbers are in the unit that the name ends in; null where not known. */
export interface ScheduleRow {
  number: string;
  from: string;
  to: string;
  function: string | null;
  unit: string | null;
  cable: string | null;
  net: string | null;
  construction: string;
  colour: string | null;
  tracer: string | null;
  dcV: number | null;
  acV: number | null;
  pulseV: number | null;
  amps: number | null;
  stressV: number | null;
  stressBasis: string | null;
  /** The stress and the class are lower bounds: a part of the stress is not known. */
  atLeast: boolean;
  classV: number | null;
  preferredV: number | null;
  /** The gauge found, else the planned one. */
  awg: number | null;
  foundAwg: number | null;
  plannedAwg: number | null;
  /** The rating of what was found, else of what is planned. */
  ratingV: number | null;
  foundRatingV: number | null;
  plannedRatingV: number | null;
  lengthMm: number | null;
  lengthBasis: string | null;
  cutMm: number | null;
  /** The cut length in inches, to the next 1/8, as it is read off a rule. */
  cutIn: string | null;
  endA: string | null;
  endB: string | null;
  stripAMm: number | null;
  stripBMm: number | null;
  sleeve: string | null;
  route: string | null;
  condition: string | null;
  origin: string | null;
  dress: string | null;
  state: string;
  notes: string | null;
  findings: string[];
}

/** What was reckoned, to six digits: far more than anybody can use. */
const figure = (value: number | null | undefined): number | null =>
  value === null || value === undefined ? null : roundSignificant(value, 6);
/** What was written down comes out as it went in. */
const valueOf = (amount: Amount | null | undefined): number | null =>
  amount ? (amount.how === 'declared' ? amount.value : figure(amount.value)) : null;

const endingOf = (end: WireEnd, study: Study): string | null => {
  if (end.termination) return end.termination;
  const terminal: Terminal | undefined =
    end.at && study.document.parts[end.at.part]?.terminals[end.at.terminal];
  return terminal?.ending ?? null;
};

const sleeveOf = (wire: Wire): string | null => {
  const sleeves = [wire.from.sleeve, wire.to.sleeve].filter((sleeve) => sleeve !== undefined);
  return sleeves.length > 0 ? [...new Set(sleeves)].join(', ') : null;
};

const routeOf = (wire: Wire, study: Study): string | null =>
  wire.route && wire.route.supports.length > 0
    ? wire.route.supports.map((id) => study.document.supports[id]?.name ?? id).join(' > ')
    : null;

const findingsByWire = (findings: readonly Finding[]): Map<string, string[]> => {
  const rules = new Map<string, string[]>();
  for (const finding of findings)
    for (const place of finding.at)
      if (place.kind === 'wire') {
        const known = rules.get(place.id) ?? [];
        if (!known.includes(finding.rule)) known.push(finding.rule);
        rules.set(place.id, known);
      }
  return rules;
};

/** The schedule of all wires, in document order.
 *  @param findings what the validator says: a row names the rules that concern its wire */
export const buildSchedule = (study: Study, findings: readonly Finding[]): ScheduleRow[] => {
  const rules = findingsByWire(findings);
  return study.index.wires.map((wire) => {
    const about = study.wires.get(wire.id);
    const net = about?.net ? study.nets.get(about.net) : undefined;
    const cutMm = about?.cut?.mm ?? null;
    const foundRatingV = about?.foundRating?.volts ?? null;
    const plannedRatingV = about?.plannedRating?.volts ?? null;
    return {
      number: wire.number,
      from: study.index.labelOf(wire.from),
      to: study.index.labelOf(wire.to),
      function: wire.function ?? null,
      unit: unitNamesOf(wire, study).join(' / ') || null,
      cable: (wire.cable && study.document.cables[wire.cable]?.name) ?? null,
      net: net?.name ?? null,
      construction: wire.construction,
      colour: wire.found.colour ?? wire.planned.colour ?? null,
      tracer: wire.found.tracer ?? wire.planned.tracer ?? null,
      dcV: valueOf(about?.carries.dcV),
      acV: valueOf(about?.carries.acV),
      pulseV: valueOf(about?.carries.pulseV),
      amps: valueOf(about?.carries.amps),
      stressV: figure(about?.stress?.volts),
      stressBasis: about?.stress?.basis ?? null,
      atLeast: about?.stress?.atLeast ?? false,
      classV: about?.need?.requiredV ?? null,
      preferredV: about?.need?.preferredV ?? null,
      awg: wire.found.awg ?? wire.planned.awg ?? null,
      foundAwg: wire.found.awg ?? null,
      plannedAwg: wire.planned.awg ?? null,
      ratingV: foundRatingV ?? plannedRatingV,
      foundRatingV,
      plannedRatingV,
      lengthMm: about?.length?.mm ?? null,
      lengthBasis: about?.length?.basis ?? null,
      cutMm,
      cutIn: cutMm === null ? null : formatInches(cutMm, 'up'),
      endA: endingOf(wire.from, study),
      endB: endingOf(wire.to, study),
      stripAMm: figure(about?.cut?.stripFromMm),
      stripBMm: figure(about?.cut?.stripToMm),
      sleeve: sleeveOf(wire),
      route: routeOf(wire, study),
      condition: wire.found.condition ?? null,
      origin: wire.origin ?? null,
      dress: wire.dress ?? null,
      state: wire.state,
      notes: [wire.found.notes, wire.notes].filter(Boolean).join('; ') || null,
      findings: rules.get(wire.id) ?? []
    };
  });
};
