// Wire wrapped round a square post: how many bare turns, and how much to strip for them.
import { mmPerInch, wireDiameterMm } from './conductor.ts';
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

/** Least turns of bare wire by gauge: the strip-force chart of "The technology of wire wrapping",
 *  which says that it conforms to MIL-STD-1130B. */
const turnsByAwg: ReadonlyMap<number, number> = new Map([
  [30, 7],
  [28, 7],
  [26, 7],
  [24, 6],
  [22, 5],
  [20, 5],
  [18, 4],
  [16, 4]
]);

/** The post of most wrapped chassis, mm. Common practice, no source. */
export const commonPostMm = 0.045 * mmPerInch;

export const hasWrapTurns = (awg: number): boolean => turnsByAwg.has(awg);

export interface PostWrap {
  readonly turns: number;
  readonly stripMm: number;
}

/** Bare turns and strip length of a wrap on a post of width x depth mm. The insulated half to one
 *  and a half turns that hold the wire still are not stripped and not counted.
 *  Formula:  strip = turns x sqrt((2 (a + b) + pi d)^2 + d^2), d the wire's diameter: its centre line
 *            runs d/2 outside the post and climbs one diameter a turn
 *  Source:   turns by MIL-STD-1130B as charted in "The technology of wire wrapping"; strip by geometry
 *  Valid:    30, 28, 26, 24, 22, 20, 18, 16 AWG, posts 0.3 to 5 mm; otherwise SumError
 *  Example:  postWrap({ awg: 30, postWidthMm: 0.635, postDepthMm: 0.635 }).turns // 7
 */
export function postWrap(inputs: {
  readonly awg: number;
  readonly postWidthMm: number;
  readonly postDepthMm: number;
}): PostWrap {
  const turns = turnsByAwg.get(inputs.awg);
  if (turns === undefined) {
    throw new SumError({
      problem: 'outside the table',
      input: 'awg',
      value: String(inputs.awg),
      limit: [...turnsByAwg.keys()].join(', '),
      wayOut: 'Solder this wire, or wrap one of the listed gauges.'
    });
  }
  const post = { min: 0.3, max: 5, unit: 'mm' };
  const width = checkedNumber('post', inputs.postWidthMm, post);
  const depth = checkedNumber('post', inputs.postDepthMm, post);
  const diameter = wireDiameterMm(inputs.awg);
  const round = 2 * (width + depth) + Math.PI * diameter;
  return { turns, stripMm: turns * Math.hypot(round, diameter) };
}
