// How thick a wire is over its insulation: as measured or by its style, else at least its bare conductor.
import type { Wire } from '#document/index.ts';
import { wireDiameterMm } from '#physics/conductor.ts';
import { conductorPlanned, type Study } from '#study/index.ts';

export interface Outside {
  readonly mm: number;
  /** The insulation is not known: the figure is that of the bare conductor. */
  readonly atLeast: boolean;
}

/** Of the conductor that is to lie there; null where neither diameter nor gauge is known. */
export function outsideOf(study: Study, wire: Wire): Outside | null {
  const inPlace = study.wires.get(wire.id)?.conductor;
  const planned = wire.planned.way === 'new wire' ? conductorPlanned(wire) : inPlace;
  const mm = planned?.outsideMm ?? inPlace?.outsideMm ?? null;
  if (mm !== null && mm > 0) return { mm, atLeast: false };
  const awg = planned?.awg ?? inPlace?.awg ?? null;
  return awg === null ? null : { mm: wireDiameterMm(awg), atLeast: true };
}
