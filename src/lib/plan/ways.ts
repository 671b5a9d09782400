// The four ways of a wire: new wire, a sleeve over the old conductor, a piece spliced in, or keep it.
import type { Wire } from '#document/index.ts';
import { readsAsFailing } from '#checks/condition.ts';
import { reaches } from '#checks/shortfall.ts';
import { wireDiameterMm } from '#physics/conductor.ts';
import { formatMm, formatVolts } from '#quantity/index.ts';
import type { WireStudy } from '#study/index.ts';
import { lengthAllowance, sleeveFor, sleeveRatingV } from './sleeving.ts';
import type { WayVerdict, WireWant } from './types.ts';

/** Joints and sleeves of the bench are not trusted from here on. A matter of judgement, no source. */
const bareHandsV = 1000;
/** A lapped joint with room on both sides, mm. Common practice, no source. */
const spliceSleeveMm = 40;

export const isFailing = ({ found }: Wire): boolean =>
  [found.condition, found.notes].some((words) => words !== undefined && readsAsFailing(words));

/** Why a wire is no wire to be replaced by hook-up wire; null where it is one. */
export const whyNotBought = (wire: Wire, want: WireWant | null): string | null => {
  if (wire.isPart !== undefined)
    return `it is itself a part (${wire.isPart}): hook-up wire must not take its place`;
  if (want !== null) return null;
  return `it is a ${wire.construction} and belongs to its part`;
};

export function waysOf(wire: Wire, about: WireStudy, want: WireWant | null): readonly WayVerdict[] {
  return [
    newWire(wire, want),
    reSleeve(wire, about),
    spliceIn(wire, about, want),
    keep(wire, about)
  ];
}

const verdict = (
  way: WayVerdict['way'],
  isOpen: boolean,
  words: string,
  sleeve: WayVerdict['sleeve'] = null
): WayVerdict => ({ way, isOpen, words, sleeve });

function newWire(wire: Wire, want: WireWant | null): WayVerdict {
  const why = whyNotBought(wire, want);
  return why === null
    ? verdict('new wire', true, 'takes the old one out')
    : verdict('new wire', false, why);
}

/** Why no sleeve of the bench will do; null where one may. */
function whyNoSleeve({ need, stress, isBare }: WireStudy): string | null {
  if (!need || !stress || need.atLeast)
    return isBare
      ? 'what it carries is not known'
      : 'what it carries is not known, so that no sleeve can be said to be enough';
  if (stress.volts >= bareHandsV)
    return `it carries ${formatVolts(Number(stress.volts.toPrecision(3)))} peak: no sleeve of the bench is trusted from ${formatVolts(bareHandsV)} on`;
  if (need.askedV > sleeveRatingV)
    return `${formatVolts(Number(need.askedV.toPrecision(3)))} is asked for, and such sleeves are commonly rated ${formatVolts(sleeveRatingV)} (from memory)`;
  return null;
}

function reSleeve(wire: Wire, about: WireStudy): WayVerdict {
  const whole = wholeAsPart(wire);
  if (whole !== null) return verdict('re-sleeve', false, whole);
  const why = whyNoSleeve(about);
  if (why !== null) return verdict('re-sleeve', false, why);
  const awg = wire.found.awg ?? about.awg;
  if (awg === null)
    return verdict('re-sleeve', false, 'its gauge is not known, so that no sleeve can be chosen');
  const lengthMm = about.length === null ? null : Math.ceil(about.length.mm * lengthAllowance);
  const conductorMm = wireDiameterMm(awg) * (wire.found.stranding === 'stranded' ? 1.15 : 1);
  const sleeve = sleeveFor(conductorMm, lengthMm, 1);
  if (!sleeve) return verdict('re-sleeve', false, 'no listed sleeve fits its conductor');
  return verdict(
    're-sleeve',
    true,
    `old insulation off, ${sleeve.words}; commonly rated ${formatVolts(sleeveRatingV)} (from memory: see the data of the sleeve). Only where the copper is sound, and one end has to come off`,
    sleeve
  );
}

/** A part is neither sleeved nor cut into. */
const wholeAsPart = (wire: Wire): string | null =>
  wire.isPart === undefined ? null : whyNotBought(wire, null);

function spliceIn(wire: Wire, about: WireStudy, want: WireWant | null): WayVerdict {
  const whole = whyNotBought(wire, want);
  if (wire.isPart !== undefined && whole !== null) return verdict('splice in', false, whole);
  if (wire.critical?.keepLength === true || wire.critical?.keepPlace === true)
    return verdict('splice in', false, 'it is marked to keep its length or place: no joint in it');
  const why = whyNoSleeve(about);
  if (why !== null) return verdict('splice in', false, why);
  const outsideMm = about.conductor.outsideMm ?? 2;
  const sleeve = sleeveFor(outsideMm * 1.3, spliceSleeveMm, 2);
  if (!sleeve) return verdict('splice in', false, 'no listed sleeve fits over the joints');
  return verdict(
    'splice in',
    true,
    `for a bad stretch in a wire that is sound elsewhere: a piece that will do for the whole wire, lapped and soldered, with ${formatMm(spliceSleeveMm)} of sleeve over each joint (${sleeve.words})`,
    sleeve
  );
}

function keep(wire: Wire, about: WireStudy): WayVerdict {
  const rating = about.foundRating;
  if (isFailing(wire)) return verdict('keep', true, 'its insulation was found failing');
  if (about.isBare) return verdict('keep', true, 'it is bare by design');
  if (!about.need || about.need.atLeast)
    return verdict('keep', true, 'what it carries is not known, so nobody can say that it will do');
  if (!rating) return verdict('keep', true, 'nobody knows what it is rated for');
  return reaches(rating, about)
    ? verdict(
        'keep',
        true,
        `the wire found is rated ${formatVolts(rating.volts)}, which covers what is asked for`
      )
    : verdict(
        'keep',
        true,
        `the wire found is rated ${formatVolts(rating.volts)}, and ${formatVolts(Number(about.need.askedV.toPrecision(4)))} is asked for`
      );
}

/** What a plan proposes where nobody chose: keep what will do and is sound, else new wire. */
export function proposeWay(
  wire: Wire,
  about: WireStudy,
  want: WireWant | null,
  ways: readonly WayVerdict[]
): { readonly way: WayVerdict['way']; readonly why: string } {
  const whole = whyNotBought(wire, want);
  const sleeve = ways.find(({ way, isOpen }) => way === 're-sleeve' && isOpen);
  if (whole !== null) {
    return isFailing(wire) && sleeve
      ? { way: 're-sleeve', why: `${whole}, and its insulation was found failing` }
      : { way: 'keep', why: whole };
  }
  if (isFailing(wire)) return { way: 'new wire', why: 'its insulation was found failing' };
  if (about.isBare)
    return { way: 'keep', why: 'it is bare by design and nothing says that it is bad' };
  if (reaches(about.foundRating, about)) {
    const seen =
      wire.found.condition === undefined ? '; its condition was not written down: look at it' : '';
    return { way: 'keep', why: `what is on it covers what is asked for${seen}` };
  }
  const why = about.foundRating
    ? `the wire found is rated ${formatVolts(about.foundRating.volts)}, which does not cover what is asked for`
    : 'nobody knows what it is rated for';
  return { way: 'new wire', why };
}
