// What stands beside every "no finding", since that is not "safe": what this drawing does not know
// and what no rule can look at.
import type { Study } from '#study/index.ts';

/** What no rule can see: a document tells nothing of it. */
const unseen = ['faulty parts', 'leakage', 'bad joints', 'what nobody wrote down'];

/** "Not looked at: faulty parts, ...": to stand beside every "no finding". */
export const notLookedAtWords = `Not looked at: ${unseen.join(', ')}.`;

const wires = (count: number): string => `${count} ${count === 1 ? 'wire' : 'wires'}`;

/** Sentences about what is not known of these wires, and about what was not checked. */
export const notCheckedWords = (study: Study): string[] => {
  const all = [...study.wires.values()];
  const unknown = all.filter(({ need }) => need === null).length;
  const partial = all.filter(({ need }) => need?.atLeast).length;
  const open = study.index.wires.filter(({ from, to }) => !from.at || !to.at).length;
  return [
    ...(unknown > 0 ? [`${wires(unknown)}: class not known, drawn dotted.`] : []),
    ...(partial > 0
      ? [`${wires(partial)}: a part of the stress is missing, the class is "at least".`]
      : []),
    ...(open > 0 ? [`${wires(open)}: an end not found.`] : []),
    notLookedAtWords,
    'No finding is not "safe": measure before you trust any of this.'
  ];
};
