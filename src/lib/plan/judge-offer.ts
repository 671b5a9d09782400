// One conductor held against what a wire wants: what it falls short of, and the margin it leaves.
import type { Wire } from '#document/index.ts';
import {
  formatAmps,
  formatAwg,
  formatCelsius,
  formatNumber,
  formatVolts,
  isAtLeast
} from '#quantity/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import { allowedAmps } from './want.ts';
import type { Margin, Offer, VoltsKind, WireWant } from './types.ts';

const kindWords: Readonly<Record<VoltsKind, string>> = {
  dc: 'dc',
  ac: 'ac',
  pulse: 'recurring pulses'
};

/** Rated volts that hold for all of these kinds; null where it has no rating for one of them. */
export function ratingFor(
  { ratings }: Offer,
  kinds: readonly VoltsKind[]
): { readonly volts: number | null; readonly without: VoltsKind | null } {
  const own: number[] = [];
  for (const kind of kinds.length > 0 ? kinds : (['dc'] as const)) {
    const volts = ratings[kind] ?? ratings.any;
    if (volts === undefined) return { volts: null, without: kind };
    own.push(volts);
  }
  return { volts: Math.min(...own), without: null };
}

/** Gauges thicker than asked by more than this do not go through the same lugs. Common practice, no source. */
const thickerAtMost = 4;

export interface Judgement {
  /** Each in words with its figure; empty where it will do. */
  readonly shortfalls: readonly string[];
  readonly margin: Margin;
}

export function judgeOffer(
  study: Study,
  wire: Wire,
  about: WireStudy,
  want: WireWant,
  offer: Offer
): Judgement {
  const shortfalls: string[] = [];
  const rating = ratingFor(offer, want.kinds);
  if (want.form === 'insulated' || offer.form === 'insulated') {
    const words = ratingShortfall(rating, want, offer);
    if (words !== null) shortfalls.push(words);
  }
  if (offer.form !== want.form)
    shortfalls.push(`it is ${formWords[offer.form]}, not ${formWords[want.form]}`);
  if (offer.awg === null) {
    if (want.form === 'insulated' || want.form === 'bare')
      shortfalls.push('its gauge is not known');
  } else {
    if (offer.awg > want.awg)
      shortfalls.push(`${formatAwg(offer.awg)} is thinner than the ${formatAwg(want.awg)} wanted`);
    if (offer.awg < want.awg - thickerAtMost)
      shortfalls.push(
        `${formatAwg(offer.awg)} is too thick for lugs made for ${formatAwg(want.awg)}`
      );
    const amps = about.carries.amps?.value ?? 0;
    const allowed = allowedAmps(study, wire, offer.awg, offer.celsius);
    if (allowed !== null && amps > allowed)
      shortfalls.push(
        `it may carry ${formatAmps(Number(allowed.toPrecision(3)))} in its bundle, and ${formatAmps(amps)} flow`
      );
  }
  if (want.stranding === 'stranded' && offer.stranding === 'solid')
    shortfalls.push('it is solid, and the wire flexes');
  if (want.form === 'insulated') {
    if (offer.celsius === null) shortfalls.push('its temperature rating is not known');
    else if (offer.celsius < want.celsius)
      shortfalls.push(
        `it is rated ${formatCelsius(offer.celsius)}, and the place is reckoned at ${want.celsiusBasis}`
      );
  }
  return { shortfalls, margin: marginOf(rating.volts, about) };
}

function ratingShortfall(
  { volts, without }: ReturnType<typeof ratingFor>,
  want: WireWant,
  { ratings }: Offer
): string | null {
  if (volts === null) {
    return Object.keys(ratings).length === 0
      ? 'its rated volts are not known'
      : `it has no rating for ${kindWords[without ?? 'dc']}`;
  }
  if (isAtLeast(volts, want.ratingV)) return null;
  const least = want.atLeast ? ' at least' : '';
  return `rated ${formatVolts(volts)}, and ${formatVolts(want.ratingV)}${least} is asked for (${want.ratingBasis})`;
}

/** Rating over stress in words, with what the policy asks for beside it elsewhere. */
export function marginOf(ratingV: number | null, { stress }: WireStudy): Margin {
  const stressV = stress?.volts ?? null;
  const shown = ratingV === null ? 'rating not known' : `rated ${formatVolts(ratingV)}`;
  if (stressV === null)
    return { ratingV, stressV, ratio: null, words: `${shown}; stress not known` };
  const least = stress?.atLeast === true ? 'at least ' : '';
  if (stressV === 0 || ratingV === null) {
    return { ratingV, stressV, ratio: null, words: `${shown} on ${least}${formatVolts(stressV)}` };
  }
  const ratio = ratingV / stressV;
  const most = stress?.atLeast === true ? 'at most ' : '';
  return {
    ratingV,
    stressV,
    ratio,
    words: `${shown} on ${least}${formatVolts(Number(stressV.toPrecision(4)))}: ${most}${formatNumber(ratio, 3)} times`
  };
}

export const formWords: Readonly<Record<Offer['form'], string>> = {
  insulated: 'insulated wire',
  bare: 'bare wire',
  braid: 'braid',
  coax: 'coax',
  'twin lead': 'twin lead',
  cable: 'a cable of several conductors or with a shield'
};
