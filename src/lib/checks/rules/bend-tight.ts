// Bends tighter than the wire or cable may be bent for good.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { bendRadius, type BendKind } from '#physics/bend-radius.ts';
import { formatMm, roundSignificant } from '#quantity/index.ts';
import { findTerminalPlace, type Study } from '#study/index.ts';
import { listStops, type WayStop } from '#study/segments.ts';
import { lengthInput, plainInput } from '../amount-input.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { outsideOf } from '../wire-outside.ts';
import { wiresAsSubject } from '../words.ts';

const source =
  'NASA-STD-8739.4 [7.3.21]: 6 times the outside diameter at least, polyimide 10 times';

export const bendTight: Rule = {
  id: 'bend-tight',
  severity: 'caution',
  title: 'Bends that are too tight',
  source,
  explain:
    'At each support where a drawn way turns by more than 30 degrees, the widest bend that fits between the neighbouring stops is held against the least radius for the wire: 6 times its outside diameter, 10 times for polyimide insulation. Looked at are cables, coax, leads of 5 kV and more and wire of 4 mm and more over all, of known diameter, in the plane of the drawing: thin hook-up wire is bent round a lug every day. Coax and leads of 5 kV and more are a caution, for their insulation suffers; others a note. It passes with a way that turns more gently.',
  ...inPieces(eachWire(checkWire))
};

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly unit: string;
  readonly name: string;
}

const leastTurn = Math.PI / 6;
const kilovoltsV = 5000;
const thickMm = 4;

function checkWire(study: Study, wire: Wire): Finding[] {
  if ((wire.route?.supports.length ?? 0) === 0 || wire.state === 'removed') return [];
  const cable =
    wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
  const outside = outsideOf(study, wire);
  const diameterMm = cable?.diameterMm ?? (outside && !outside.atLeast ? outside.mm : 0);
  if (!(diameterMm > 0) || diameterMm > 100) return [];
  const volts = study.wires.get(wire.id)?.stress?.volts ?? 0;
  const isDelicate = wire.construction === 'coax' || volts >= kilovoltsV;
  if (!isDelicate && !cable && diameterMm < thickMm) return [];
  const words = `${wire.planned.insulation ?? ''} ${wire.found.insulation ?? ''}`;
  const kind: BendKind = /polyimide|kapton/i.test(words) ? 'polyimide' : cable ? 'cable' : 'wire';
  const { minimumMm } = bendRadius({ diameterMm, kind });
  const spots = listStops(study.document, study.index, wire).map((stop) => spotOf(study, stop));
  const tightest = spots.reduce<{ radiusMm: number; at: string } | null>((worst, spot, n) => {
    const [before, after] = [spots[n - 1], spots[n + 1]];
    if (!before || !spot || !after) return worst;
    if (before.unit !== spot.unit || after.unit !== spot.unit) return worst;
    const radiusMm =
      widestMm(before, spot, after, n === 1, n === spots.length - 2) - diameterMm / 2;
    return worst && worst.radiusMm <= radiusMm ? worst : { radiusMm, at: spot.name };
  }, null);
  if (!tightest || tightest.radiusMm >= minimumMm) return [];
  const radius = formatMm(roundSignificant(Math.max(0, tightest.radiusMm), 2));
  return [
    {
      rule: 'bend-tight',
      severity: isDelicate ? 'caution' : 'note',
      at: [wirePlace(study, wire)],
      message: `${wiresAsSubject(study, [wire])} turns at ${tightest.at} within a radius of ${radius} at most; with ${formatMm(roundSignificant(diameterMm, 2))} over all it may be bent to ${formatMm(roundSignificant(minimumMm, 2))}.`,
      source,
      fix: { words: 'Lead it round in a wider bend, or move the support.' },
      why: {
        sum: 'bend-radius',
        inputs: [
          lengthInput(
            'Outside diameter',
            roundSignificant(diameterMm, 3),
            cable?.diameterMm === undefined
              ? 'as measured, by style or wall'
              : 'jacket of the cable'
          ),
          plainInput('Kind', kind, 'construction and insulation'),
          lengthInput(
            'Widest bend that fits',
            roundSignificant(Math.max(0, tightest.radiusMm), 3),
            'stops as drawn'
          )
        ],
        outcome: `${radius} against ${formatMm(roundSignificant(minimumMm, 3))}.`,
        passes: 'when the way leaves room for the least radius.'
      }
    }
  ];
}

function spotOf(study: Study, stop: WayStop): Spot | null {
  if (stop.kind === 'support') {
    const support = findElement(study.document.supports, stop.id);
    return support
      ? { ...support.place, unit: support.unit, name: support.name || support.kind }
      : null;
  }
  const entry = study.index.terminalByKey.get(stop.key);
  const place = entry && findTerminalPlace(entry.part, entry.terminal);
  return place
    ? { x: place.x, y: place.y, unit: entry.part.unit, name: entry.part.reference }
    : null;
}

/** Radius of the widest bend at a stop, mm, at the middle of the wire: a leg between two turns serves
 *  both of them, one to an end serves its turn alone. Endless where it hardly turns. */
function widestMm(before: Spot, at: Spot, after: Spot, isFirst: boolean, isLast: boolean): number {
  const [inX, inY] = [at.x - before.x, at.y - before.y];
  const [outX, outY] = [after.x - at.x, after.y - at.y];
  const [inMm, outMm] = [Math.hypot(inX, inY), Math.hypot(outX, outY)];
  if (inMm === 0 || outMm === 0) return Infinity;
  const turn = Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY));
  if (turn < leastTurn) return Infinity;
  const tangentMm = Math.min(isFirst ? inMm : inMm / 2, isLast ? outMm : outMm / 2);
  return tangentMm / Math.tan(turn / 2);
}
