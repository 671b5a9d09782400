// Leads of low-level audio, by their words and by what they carry: the ones that pick up hum.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';

/** More than that is no longer low level. */
export const lowLevelV = 3;

const lowLevelWords =
  /\b(?:volume|phono|pick-?up|tape|tone|microphone|audio (?:grid|in(?:put)?|amp|signal|to|from)|detected audio)\b/i;
const notLowLevel =
  /\b(?:speaker|voice coil|output|i\.?f|video|r\.?f|b\s?\+|b\s?-|heater|shield|return|ground)(?![a-z])/i;

/** True for a bare lead of low-level audio. */
export function isLowLevelAudio(study: Study, wire: Wire): boolean {
  const words = wire.function ?? '';
  if (!lowLevelWords.test(words) || notLowLevel.test(words) || isShielded(study, wire))
    return false;
  return (study.wires.get(wire.id)?.carries.acV?.value ?? 0) <= lowLevelV;
}

/** True for a conductor inside a shield, and for the shield itself. */
export function isShielded(study: Study, wire: Wire): boolean {
  if (wire.construction === 'coax' || wire.construction === 'shield') return true;
  const cable =
    wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
  return cable !== undefined && cable.kind !== 'twin lead' && cable.kind !== 'multi-conductor';
}
