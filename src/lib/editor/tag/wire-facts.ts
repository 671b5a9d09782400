// What the paper tag says of a wire: short facts in a fixed order, each with its reasoning for
// "why?". A fact that is missing says so in words.
import type { Found, Planned, Wire } from '#document/index.ts';
import { formatAwg, formatInches, formatMm, formatVolts } from '#quantity/index.ts';
import type { Amount, Rating, Study, WireStudy } from '#study/index.ts';
import { carriesText, colourText, needText } from '../core/words.ts';

export interface Fact {
  readonly label: string;
  readonly value: string;
  /** A softer word beside the value. */
  readonly aside?: string;
  /** The reasoning, a sentence each; empty where there is none to give. */
  readonly why: readonly string[];
  readonly tone?: 'strong' | 'unknown';
}

const sourceWords = {
  declared: 'declared',
  net: 'from what it joins',
  part: 'from a part',
  solved: 'reckoned'
} as const;

const unique = <T>(items: readonly T[]): T[] => [...new Set(items)];

const carriesFact = (study: WireStudy): Fact => {
  const text = carriesText(study.carries);
  const amounts = Object.values(study.carries).filter(
    (amount): amount is Amount => amount !== null
  );
  if (text === '') {
    return {
      label: 'Carries',
      value: 'not known',
      tone: 'unknown',
      why: ['Nobody has said what this wire carries, and nothing joined to it says so either.']
    };
  }
  return {
    label: 'Carries',
    value: text,
    aside: unique(amounts.map(({ how }) => sourceWords[how])).join(', '),
    why: unique(amounts.map(({ basis }) => basis))
  };
};

const stressFact = ({ stress }: WireStudy): Fact => {
  if (stress === null) {
    return { label: 'Stress', value: 'not known', tone: 'unknown', why: [] };
  }
  const volts = formatVolts(stress.volts);
  const missing =
    stress.missing.length === 0 ? [] : [`A lower bound: ${stress.missing.join(', ')} not known.`];
  return {
    label: 'Stress',
    value: stress.atLeast ? `at least ${volts}` : volts,
    aside: 'peak, to chassis',
    why: [stress.basis, ...missing]
  };
};

const needFacts = ({ need }: WireStudy): Fact[] => {
  if (need === null) {
    const why = [
      'Without a stress there is no class to ask for. Treat it as the highest voltage in the unit until it is known.'
    ];
    return [{ label: 'Needs', value: 'not known', tone: 'unknown', why }];
  }
  return [
    { label: 'Needs', value: `${needText(need)} class`, tone: 'strong', why: [need.basis] },
    { label: 'Better', value: `${formatVolts(need.preferredV)} class`, why: [] }
  ];
};

const ratingText = (rating: Rating | null): string =>
  rating === null
    ? 'rating not known'
    : `${formatVolts(rating.volts)}${rating.kind === 'any' ? '' : ` ${rating.kind}`}`;

const conductorText = (conductor: Found | Planned): string =>
  [
    conductor.awg === undefined ? '' : formatAwg(conductor.awg),
    conductor.stranding ?? '',
    conductor.plating ?? '',
    colourText(conductor.colour, conductor.tracer),
    conductor.style ?? conductor.insulation ?? ''
  ]
    .filter((part) => part !== '')
    .join(' ');

const foundFact = (wire: Wire, study: WireStudy): Fact => ({
  label: 'Found',
  value: conductorText(wire.found) || (study.isBare ? 'bare' : 'not written down'),
  aside: study.isBare
    ? (wire.found.condition ?? wire.construction)
    : [ratingText(study.foundRating), wire.found.condition ?? ''].filter(Boolean).join(', '),
  why: study.foundRating === null ? [] : [`Rating: ${study.foundRating.basis}.`]
});

const lengthFacts = ({ length, cut }: WireStudy): Fact[] => {
  const facts: Fact[] = [
    length === null
      ? { label: 'Length', value: 'not known', tone: 'unknown', why: [] }
      : { label: 'Length', value: formatMm(length.mm), aside: length.how, why: [length.basis] }
  ];
  if (cut !== null) {
    facts.push({
      label: 'Cut',
      value: `${formatMm(cut.mm)}, ${formatInches(cut.mm, 'up')}`,
      why: [cut.basis]
    });
  }
  return facts;
};

const plannedText = (wire: Wire): string =>
  [wire.planned.way ?? '', conductorText(wire.planned)].filter(Boolean).join(': ');

/** Nobody has planned what is to become of the wire. */
export const isUnplanned = (wire: Wire): boolean => plannedText(wire) === '';

const plannedFacts = (wire: Wire, study: WireStudy): Fact[] => {
  if (!isUnplanned(wire)) {
    const why = study.plannedRating === null ? [] : [`Rating: ${study.plannedRating.basis}.`];
    return [
      { label: 'Planned', value: plannedText(wire), aside: ratingText(study.plannedRating), why }
    ];
  }
  const planned: Fact = { label: 'Planned', value: 'nothing yet', why: [] };
  const { recommended } = study;
  if (recommended === null) return [planned];
  const volts = formatVolts(recommended.classV);
  const value = `${formatAwg(recommended.awg)} ${recommended.stranding} ${recommended.plating}, ${
    recommended.atLeast ? 'at least ' : ''
  }${volts}`;
  const why = [`${recommended.why}.`, `Class ${recommended.classBasis}.`];
  return [planned, { label: 'Put in', value, why }];
};

const criticalText = (wire: Wire): string =>
  [
    wire.critical?.keepLength === true ? 'keep its length' : '',
    wire.critical?.keepPlace === true ? 'keep its place' : '',
    wire.critical?.keepShort === true ? 'keep it short' : ''
  ]
    .filter(Boolean)
    .join(', ');

const plain = (label: string, value: string | undefined): Fact[] =>
  value === undefined || value === '' ? [] : [{ label, value, why: [] }];

/** The facts of a wire's tag, top to bottom. */
export const buildWireFacts = (wire: Wire, about: WireStudy, study: Study): readonly Fact[] => {
  const net = about.net === null ? undefined : study.nets.get(about.net);
  const joined = net === undefined ? undefined : `${net.name}, ${net.terminals.length} points`;
  return [
    ...plain('Does', wire.function),
    carriesFact(about),
    stressFact(about),
    ...needFacts(about),
    foundFact(wire, about),
    ...lengthFacts(about),
    ...plannedFacts(wire, about),
    ...plain('Joined to', joined),
    ...plain('Leave as is', criticalText(wire)),
    ...plain('Dress', wire.dress),
    ...plain('Is a part', wire.isPart),
    ...plain('Notes', [wire.found.notes, wire.notes].filter(Boolean).join('; '))
  ];
};
