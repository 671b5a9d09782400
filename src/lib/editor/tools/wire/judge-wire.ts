// A wire that is still in the hand, judged as if it were soldered: what it would carry, the class that
// it would need, and whether it would join what must not be joined.
import { makeChecker } from '#checks/index.ts';
import { suppliesJoined } from '#checks/rules/supplies-joined.ts';
import { supplyShorted } from '#checks/rules/supply-shorted.ts';
import type { Wire } from '#document/index.ts';
import { classBandOf, updateStudy, type ClassBand, type Study } from '#study/index.ts';
import { carriesText, needText } from '../../core/words.ts';

export interface Judgement {
  readonly band: ClassBand;
  /** "needs 600 V", "class not known". */
  readonly need: string;
  /** "285 V dc"; empty where nothing is known. */
  readonly carries: string;
  /** What would be wrong with it, or null. Not that anything else is right. */
  readonly danger: string | null;
}

const checkerOf = makeChecker([supplyShorted, suppliesJoined]);

const judgements = new WeakMap<Study, Map<string, Judgement>>();

/** @param wire as it would be added to the study's document */
export const judgeWire = (study: Study, wire: Wire): Judgement => {
  const known = judgements.get(study) ?? new Map<string, Judgement>();
  judgements.set(study, known);
  const key = JSON.stringify([wire.from.at, wire.to.at, wire.found]);
  const before = known.get(key);
  if (before) return before;
  const { document } = study;
  const wires = { ...document.wires, [wire.id]: wire };
  const tried = updateStudy(study, { ...document, wires });
  const about = tried.wires.get(wire.id);
  const need = about?.need ?? null;
  const mute = new Set(checkerOf(study).map(({ message }) => message));
  const danger = checkerOf(tried).find(({ message }) => !mute.has(message));
  const judged: Judgement = {
    band: classBandOf(need?.requiredV ?? null),
    need: need === null ? 'class not known' : `needs ${needText(need)}`,
    carries: about ? carriesText(about.carries) : '',
    danger: danger?.message ?? null
  };
  known.set(key, judged);
  return judged;
};
