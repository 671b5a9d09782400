// Bench sums of handling wire: melting current, wraps, bends.
import * as z from 'zod';
import { bendKinds, bendRadius } from '../bend-radius.ts';
import { onderdonkAmps, preeceAmps } from '../fusing.ts';
import { postWrap } from '../post-wrap.ts';
import { awgInput } from './conductor-sums.ts';
import { amount, choice, lengths } from './input.ts';
import { defineSum } from './sum.ts';

export const fusing = defineSum({
  id: 'fusing',
  title: 'Current that melts a wire',
  inputs: z.object({
    awg: awgInput(),
    seconds: amount('time', {
      min: 0.001,
      max: 10,
      unit: 's',
      words: 'time in which it melts',
      example: '1'
    }),
    ambient: amount('temperature', {
      min: -40,
      max: 200,
      unit: 'C',
      words: 'air round the wire',
      example: '25',
      fallback: 25
    })
  }),
  results: { onderdonk: 'A', preece: 'A' },
  formula:
    'onderdonk = A sqrt(log10((1083 - Ta) / (234 + Ta) + 1) / (33 t)), A in circular mils; preece = 10244 d^1.5, d in inches',
  basis:
    'Bare copper melting, and insulation burns long before. Why a fuse must be far smaller; never a rating, and no wire is protected by this.',
  source:
    "Onderdonk's equation as commonly quoted; W. H. Preece's rule for free air, which has no time in it",
  find: ({ awg, seconds, ambient }) => ({
    results: {
      onderdonk: onderdonkAmps({ awg, seconds, ambientC: ambient }),
      preece: preeceAmps(awg)
    }
  })
});

export const postWrapSum = defineSum({
  id: 'post-wrap',
  title: 'Wrap on a post',
  inputs: z.object({
    awg: awgInput(),
    post: lengths({
      separator: 'x',
      min: 0.3,
      max: 5,
      count: 2,
      words: 'width x depth of the post',
      example: '1.14x1.14'
    })
  }),
  results: { turns: '', strip: 'mm' },
  formula: 'turns by gauge; strip = turns x sqrt((2 (a + b) + pi d)^2 + d^2)',
  basis:
    'Bare turns; half to one and a half insulated turns more hold the wire still. Strip by the length of the helix round the post.',
  source: 'MIL-STD-1130B as charted in "The technology of wire wrapping"; strip by geometry',
  find: ({ awg, post: [width = 0, depth = 0] }) => {
    const { turns, stripMm } = postWrap({ awg, postWidthMm: width, postDepthMm: depth });
    return { results: { turns, strip: stripMm } };
  }
});

export const bendRadiusSum = defineSum({
  id: 'bend-radius',
  title: 'Tightest bend',
  inputs: z.object({
    diameter: amount('length', {
      min: 0,
      max: 100,
      above: true,
      unit: 'mm',
      words: 'outside diameter of wire or cable',
      example: '1.6mm'
    }),
    kind: choice(bendKinds, { words: 'wire, cable, or polyimide-insulated wire', fallback: 'wire' })
  }),
  results: { minimum: 'mm', preferred: 'mm' },
  formula: 'minimum = 6 D, preferred = 10 D; polyimide insulation 10 D and 15 D',
  basis: 'Inside radius of a bend that stays.',
  source: 'NASA-STD-8739.4 [7.3.21] as its workmanship pages print it',
  find: ({ diameter, kind }) => {
    const { minimumMm, preferredMm } = bendRadius({ diameterMm: diameter, kind });
    return { results: { minimum: minimumMm, preferred: preferredMm } };
  }
});
