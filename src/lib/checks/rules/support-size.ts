// A clamp, grommet or hole that is too small for what runs through it.
import type { Id, Support, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { packCircles } from '#physics/packing/pack-circles.ts';
import { formatMm, roundSignificant } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import { lengthInput, plainInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { wirePlace } from '../places.ts';
import { commonPractice } from '../words.ts';
import { outsideOf } from '../wire-outside.ts';

export const supportSize: Rule = {
  id: 'support-size',
  severity: 'fault',
  title: 'Supports too small for their bundle',
  source: commonPractice,
  explain:
    'The wires that run through a clamp, grommet or hole with a known bore are packed into the smallest circle that can be found for them, planned wire where new wire is planned. A cable counts as its jacket. Where the insulation is not known the bare conductor counts, so that the bundle is at least as thick as said. A bundle thicker than the bore is a fault. It passes with a larger support, thinner wire, or another way for some of them.',
  check: (study) =>
    Object.values(study.document.supports).flatMap((support) => checkSupport(study, support))
};

interface Thing {
  readonly mm: number;
  readonly atLeast: boolean;
}

function checkSupport(study: Study, support: Support): Finding[] {
  const { boreMm } = support;
  const bundle = study.bundles.find((each) => each.support === support.id);
  if (boreMm === undefined || !(boreMm > 0) || !bundle) return [];
  const wires = bundle.wires
    .map((id) => findElement(study.document.wires, id))
    .filter((wire) => wire !== undefined);
  const things = listThings(study, wires);
  const packed = packedMm(
    things.map(({ mm }) => mm),
    boreMm
  );
  if (packed === null || roundSignificant(packed) <= roundSignificant(boreMm)) return [];
  const atLeast = things.some((thing) => thing.atLeast) || things.length < wires.length;
  const [first, ...others] = wires;
  return first
    ? [
        {
          rule: 'support-size',
          severity: 'fault',
          at: [wirePlace(study, first), ...others.map((wire) => wirePlace(study, wire))],
          message: `${wires.length} wires run through the ${support.kind} ${support.name}; their bundle measures ${atLeast ? 'at least ' : ''}${formatMm(roundSignificant(packed, 3))}, its bore ${formatMm(boreMm)}.`,
          source: commonPractice,
          fix: { words: 'Fit a larger one, or lead some of the wires another way.' },
          why: {
            sum: 'bundle',
            inputs: [
              plainInput('Wires', String(things.length), 'a cable counts as one'),
              plainInput(
                'Diameters',
                things.map(({ mm }) => formatMm(roundSignificant(mm, 2))).join(', '),
                'as measured, by style or wall; bare conductor where not known'
              ),
              lengthInput('Bore', boreMm, 'as entered')
            ],
            outcome: `${formatMm(roundSignificant(packed, 3))} does not go through ${formatMm(boreMm)}.`,
            passes: 'when the packed bundle is no thicker than the bore.'
          }
        }
      ]
    : [];
}

/** Wires by themselves and cables by their jackets. Those of which nothing is known are left out. */
function listThings(study: Study, wires: readonly Wire[]): readonly Thing[] {
  const seen = new Set<Id>();
  return wires.flatMap((wire): Thing[] => {
    const cable =
      wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
    if (cable?.diameterMm !== undefined && cable.diameterMm > 0) {
      if (seen.has(cable.id)) return [];
      seen.add(cable.id);
      return [{ mm: cable.diameterMm, atLeast: false }];
    }
    const outside = outsideOf(study, wire);
    return outside ? [outside] : [];
  });
}

/** More wires than that are not packed one by one, the handbook's estimate does. */
const mostPacked = 60;

/** The diameter of the bundle where it may be too thick; null where it surely goes through. */
function packedMm(diameters: readonly number[], boreMm: number): number | null {
  if (diameters.length === 0) return null;
  const largest = Math.max(...diameters);
  const area = Math.sqrt(diameters.reduce((sum, mm) => sum + mm * mm, 0));
  // No packing is tighter than the copper and its insulation without gaps.
  if (Math.max(largest, area) > boreMm) return Math.max(largest, area);
  // And none that was looked for comes out looser than this.
  if (1.35 * area + 0.2 * largest <= boreMm) return null;
  const usable = diameters.filter((mm) => mm >= largest / 100);
  if (usable.length > mostPacked) return 1.2 * area;
  return packCircles(usable).diameter;
}
