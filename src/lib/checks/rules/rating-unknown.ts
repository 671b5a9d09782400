// Nobody wrote down what the insulation is rated for, and no rated wire is planned.
import type { Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { readsAsFailing } from '../condition.ts';
import type { Finding, Rule } from '../finding.ts';
import { documentPlace, wirePlace } from '../places.ts';
import { highVoltageV, isFoundInPlace } from '../shortfall.ts';
import { carriesWords, classWords, commonPractice, listed, wiresAsSubject } from '../words.ts';

export const ratingUnknown: Rule = {
  id: 'rating-unknown',
  severity: 'caution',
  title: 'Insulation whose rating nobody wrote down',
  source: commonPractice,
  explain:
    'A wire that carries 1 kV or more, or that is to be kept or sleeved anew although it carries more than 60 V, and of which neither what was found nor what is planned has a rating, is a caution of its own. All other wires without a rating, as old hook-up wire mostly is, are one note together, save those whose insulation is written down as failing anyway. A marked voltage, a style such as UL 1015, or a planned wire with a rating makes it pass. Bare conductors, leads of parts and wires that are parts themselves are left out.',
  check: (study) => {
    const own: Finding[] = [];
    const ordinary: Wire[] = [];
    for (const wire of study.index.wires) {
      if (!isUnrated(study, wire)) continue;
      const finding = ownFinding(study, wire);
      if (finding) own.push(finding);
      else if (!readsAsFailing(wire.found.condition ?? '')) ordinary.push(wire);
    }
    return ordinary.length === 0 ? own : [...own, together(study, ordinary)];
  }
};

const withoutOwnRating: ReadonlySet<string> = new Set(['pigtail', 'component lead', 'shield']);

function isUnrated(study: Study, wire: Wire): boolean {
  const about = study.wires.get(wire.id);
  if (!about || about.isBare || wire.isPart !== undefined) return false;
  if (withoutOwnRating.has(wire.construction)) return false;
  if (about.plannedRating !== null) return false;
  return about.foundRating === null || !isFoundInPlace(wire);
}

/** Volts that a person may not touch: published limits for dc begin at 60 V. */
const touchV = 60;

function ownFinding(study: Study, wire: Wire): Finding | null {
  const about = study.wires.get(wire.id);
  const volts = about?.stress?.volts ?? 0;
  const isSleeved = wire.planned.way === 're-sleeve';
  const isKept = (isSleeved || wire.planned.way === 'keep') && volts > touchV;
  if (!about?.need || (volts < highVoltageV && !isKept)) return null;
  const kept = !isKept ? '' : isSleeved ? ' and is to be sleeved anew' : ' and is to be kept';
  const what = isKept && isSleeved ? 'the sleeve' : 'its insulation';
  return {
    rule: 'rating-unknown',
    severity: 'caution',
    at: [wirePlace(study, wire)],
    message: `${wiresAsSubject(study, [wire])} carries ${carriesWords(about)}${kept}, but nobody wrote down what ${what} is rated for. It needs ${classWords(about.need)}.`,
    source: commonPractice,
    fix: {
      words: 'Write down the voltage or style that is printed on it, or plan a wire with a rating.'
    }
  };
}

function together(study: Study, wires: readonly Wire[]): Finding {
  const numbers = wires.map((wire) => wire.number).filter((number) => number !== '');
  const which = numbers.length === 0 ? '' : ` (${listed(numbers, 8)})`;
  const [verb, its] = wires.length === 1 ? ['is', 'its'] : ['are', 'their'];
  return {
    rule: 'rating-unknown',
    severity: 'note',
    at: [documentPlace(study), ...wires.map((wire) => wirePlace(study, wire))],
    message: `${wires.length} ordinary ${wires.length === 1 ? 'wire' : 'wires'}${which} ${verb} of unknown rating: nothing is printed on ${its} insulation that anybody wrote down, and no rated wire is planned. Old insulation is not to be trusted with the class it may once have had.`,
    source: commonPractice,
    fix: { words: 'Plan wire of the class needed for each that is to be replaced.' }
  };
}
