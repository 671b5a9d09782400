// More current than the wire may carry where it lies.
import type { Wire } from '#document/index.ts';
import { formatAmps, formatAwg, isAtLeast } from '#quantity/index.ts';
import {
  conductorPlanned,
  type Amount,
  type Conductor,
  type Study,
  type WireStudy
} from '#study/index.ts';
import type { FunctionRole } from '#study/function-words.ts';
import { isInsulationOnly } from '#study/insulation-only.ts';
import { ampsInput, awgInput, celsiusInput, plainInput } from '../amount-input.ts';
import type { Finding, Rule, Severity } from '../finding.ts';
import { eachWire, inPieces } from '../pieces.ts';
import { wirePlace } from '../places.ts';
import { findAmpacity, type WireAmpacity } from '../wire-ampacity.ts';
import { wiresAsSubject } from '../words.ts';

const source = 'FAA AC 43.13-1B Table 11-9 and the MIL-W-5088L bundle curve, for a warm cabinet';

export const overAmpacity: Rule = {
  id: 'over-ampacity',
  severity: 'fault',
  title: 'More current than the wire may carry',
  source,
  explain:
    'Published currents for one gauge differ by four to one, since each supposes another surrounding; the basis stands with every finding. Taken here, unless the policy names another basis, is the aviation table for wire in bundles: the lowest of the published families that counts bundle and temperature, since a cabinet is hot, its air is still, and PVC stands 80 to 105 °C. It is corrected to the insulation and to the ambient of the policy, and to the wires beside it that carry at least a fifth of what they could. Insulation of which no rating is known counts by what it is (rubber and cotton 60 °C, thermoplastic 80 °C, from memory). Up to a quarter over is a caution, more a fault; what the plan puts right is a note. Wires of a few milliamperes, second-anode leads and signals are not looked at: current is not what limits them. It passes with a thicker wire, better insulation, or a smaller current declared from a measurement.',
  ...inPieces(eachWire(checkWire))
};

/** No wire that people handle is limited by less, A. */
const leastA = 0.3;

function checkWire(study: Study, wire: Wire): Finding[] {
  const about = study.wires.get(wire.id);
  const amps = about && greaterAmps(about);
  if (!about || !amps || amps.value < leastA || wire.isPart !== undefined) return [];
  const net = study.nets.get(about.net ?? '');
  const says = (role: FunctionRole) => about.roles.has(role) || net?.roles.has(role) === true;
  if (isInsulationOnly(about.stress?.volts ?? 0, says)) return [];
  const inPlace = about.conductor;
  const planned = conductorPlanned(wire);
  const found = overBy(study, wire, inPlace, amps);
  const then = isSameWire(inPlace, planned) ? found : overBy(study, wire, planned, amps);
  if (!found && !then) return [];
  const isPutRight = found !== null && then === null;
  const worse = then ?? found;
  if (!worse) return [];
  const severity: Severity = isPutRight
    ? 'note'
    : isAtLeast(1.25 * worse.allowedA, amps.value)
      ? 'caution'
      : 'fault';
  return [finding(study, wire, about, amps, worse, severity, isPutRight)];
}

/** The declared current, or what the circuit draws where that is more. */
function greaterAmps({ carries, current }: WireStudy): Amount | null {
  const { amps } = carries;
  if (!current || (amps && amps.value >= current.amps)) return amps;
  return { value: current.amps, how: 'solved', basis: current.basis };
}

const isSameWire = (a: Conductor, b: Conductor): boolean =>
  a.awg === b.awg && a.ratingC === b.ratingC && a.which === b.which;

function overBy(
  study: Study,
  wire: Wire,
  conductor: Conductor,
  { value }: Amount
): WireAmpacity | null {
  const allowed = findAmpacity(study, wire, conductor);
  return allowed && !isAtLeast(allowed.allowedA, value) ? allowed : null;
}

function finding(
  study: Study,
  wire: Wire,
  about: WireStudy,
  amps: Amount,
  allowed: WireAmpacity,
  severity: Severity,
  isPutRight: boolean
): Finding {
  const { awg, insulation, ambientC, loaded, allowedA, basis } = allowed;
  const beside =
    loaded === 1
      ? 'alone'
      : `with ${loaded - 1} loaded ${loaded === 2 ? 'wire' : 'wires'} beside it`;
  const better = isPutRight ? null : thickerGauge(study, wire, about, amps);
  const planned = isPutRight ? ' What is planned for it will do.' : '';
  return {
    rule: 'over-ampacity',
    severity,
    at: [wirePlace(study, wire)],
    message: `${wiresAsSubject(study, [wire])} carries ${formatAmps(amps.value)}; ${formatAwg(awg)} ${insulation.isUnknown ? `whose insulation is not known (taken as ${insulation.celsius} °C)` : `of ${insulation.celsius} °C`} in ${ambientC} °C, ${beside}, may carry ${formatAmps(allowedA)}.${planned}`,
    source,
    ...(better === null
      ? isPutRight
        ? {}
        : { fix: { words: 'Split the load, or run two wires.' } }
      : {
          fix: {
            words: `Plan ${formatAwg(better)}.`,
            edit: {
              kind: 'change-wire',
              args: {
                id: wire.id,
                fields: {
                  planned: {
                    way:
                      wire.planned.way === undefined || wire.planned.way === 'keep'
                        ? 'new wire'
                        : wire.planned.way,
                    awg: better
                  }
                }
              }
            }
          }
        }),
    why: {
      sum: 'ampacity',
      inputs: [
        ampsInput('Current', amps),
        awgInput(awg, severity === 'note' ? 'as found' : 'as it lies there, or as planned'),
        celsiusInput('Insulation', insulation.celsius, insulation.basis),
        celsiusInput('Ambient', ambientC, 'policy'),
        plainInput(
          'Loaded wires in the bundle',
          String(loaded),
          'supports and stretches that it shares'
        )
      ],
      outcome: `${formatAmps(amps.value)} against ${formatAmps(allowedA)}. ${basis}`,
      passes:
        'with a gauge and insulation that may carry the current there, or with a smaller current.'
    }
  };
}

/** The thinnest gauge in even steps that may carry it, with the insulation that is planned. */
function thickerGauge(study: Study, wire: Wire, about: WireStudy, amps: Amount): number | null {
  const planned = conductorPlanned(wire);
  if (about.recommended === null) return null;
  for (let awg = 22; awg >= 10; awg -= 2) {
    if (planned.awg !== null && awg >= planned.awg) continue;
    if (overBy(study, wire, { ...planned, awg }, amps) === null) return awg;
  }
  return null;
}
