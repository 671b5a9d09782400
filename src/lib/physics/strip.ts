// How much insulation to strip for an ending. All of it common practice, no source; the wrap post
// goes by its own sum.
import { wireDiameterMm } from './conductor.ts';
import { commonPostMm, hasWrapTurns, postWrap } from './post-wrap.ts';

interface StripRule {
  /** What the ending itself takes, mm. */
  readonly baseMm: number;
  /** Added for each wire diameter: thick wire bends wide. */
  readonly diameters: number;
  readonly words: string;
}

const lugRule: StripRule = { baseMm: 8, diameters: 3, words: 'hooked through a solder lug' };
const rules: ReadonlyMap<string, StripRule> = new Map([
  ['solder lug', lugRule],
  ['tube pin', { baseMm: 6, diameters: 3, words: 'hooked on a tube pin' }],
  ['plug pin', { baseMm: 12, diameters: 0, words: 'through a hollow pin' }],
  ['pigtail', { baseMm: 12, diameters: 3, words: 'twisted on a pigtail' }],
  ['lead', { baseMm: 8, diameters: 3, words: 'hooked on a component lead' }],
  ['clip', { baseMm: 6, diameters: 1, words: 'in a clip' }],
  ['cap', { baseMm: 6, diameters: 1, words: 'in a cap clip' }],
  ['pad', { baseMm: 4, diameters: 2, words: 'through a board' }]
]);

/** Diameter of a 6-32 terminal screw, mm. */
const screwMm = 3.5;

export interface Strip {
  readonly mm: number;
  /** For people: "hooked through a solder lug, 22 AWG". */
  readonly basis: string;
}

/** Bare length that an ending takes, mm, for a gauge. An ending that is not known counts as a
 *  solder lug and says so.
 *  Formula:  base + k d by ending; screw: three quarters of a turn round a 6-32; wrap post: the wrap's strip
 *  Source:   common practice, no source
 *  Valid:    gauges -3 to 50; otherwise SumError
 *  Example:  stripFor('solder lug', 22).mm // 9.93141
 */
export function stripFor(ending: string | undefined, awg: number): Strip {
  const diameter = wireDiameterMm(awg);
  const gauge = `${awg} AWG`;
  if (ending === 'screw') {
    const mm = 3 + 0.75 * Math.PI * (screwMm + diameter);
    return { mm, basis: `three quarters of a turn round a screw, ${gauge}` };
  }
  if (ending === 'wrap post' && hasWrapTurns(awg)) {
    const wrap = postWrap({ awg, postWidthMm: commonPostMm, postDepthMm: commonPostMm });
    return { mm: wrap.stripMm, basis: `${wrap.turns} turns on a 0.045 in post, ${gauge}` };
  }
  const rule = ending === undefined ? undefined : rules.get(ending);
  const { baseMm, diameters, words } = rule ?? lugRule;
  const why = ending === 'wrap post' ? 'too thick or thin to wrap' : 'ending not known';
  const basis = rule ? `${words}, ${gauge}` : `${why}: as if ${words}, ${gauge}`;
  return { mm: baseMm + diameters * diameter, basis };
}
