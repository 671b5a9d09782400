// A plug and a jack of one number are the two halves of one connector, where their pins leave no doubt and
// no wire of the list runs from the one to the other: then what the one half carries the other carries too. Which were taken so is told, and how to undo it.
import type { Part } from '#document/index.ts';
import type { BuiltPart } from './build-part.ts';
import type { TellNote } from './notes.ts';
import type { PartDraft } from './part-drafts.ts';

/** Two pins may be those of a power plug and of a speaker's jack. */
const leastPins = 3;

/** The parts as built, plugs with the jack that they go into.
 *  @param isWired a wire runs from the one to the other */
export const takeMates = (
  built: ReadonlyMap<PartDraft, BuiltPart>,
  isWired: (a: PartDraft, b: PartDraft) => boolean,
  tell: TellNote
): Map<PartDraft, BuiltPart> => {
  const mated = new Map(built);
  for (const [draft, plug] of built) {
    const number = /^P(\d+)$/i.exec(draft.reference)?.[1];
    if (draft.kind !== 'plug' || number === undefined) continue;
    const others = [...built].filter(
      ([other]) => other.kind === 'jack' && other.reference.toUpperCase() === `J${number}`
    );
    const twins = [...built.keys()].filter(
      (other) => other.reference.toUpperCase() === draft.reference.toUpperCase()
    );
    const [first] = others;
    // A wire between them is a cable that ends in both, or the list's way to say that they mate.
    if (!first || isWired(draft, first[0])) continue;
    const names = `${draft.reference} and ${first[0].reference}`;
    const pins = sharedPins(plug.part, first[1].part);
    const isCertain = others.length === 1 && twins.length === 1 && pins.length >= leastPins;
    if (isCertain) {
      mated.set(draft, { ...plug, part: { ...plug.part, mates: first[1].part.id } });
      tell(
        'reading',
        { row: draft.firstRow },
        `${names} are taken for the two halves of one connector, pins ${pins.join(', ')} joined by their names; if they are not, give one of them another number in the list`
      );
    } else {
      tell(
        'reading',
        { row: draft.firstRow },
        `${names} have one number, but are not taken for the halves of one connector: ${pins.length >= leastPins ? 'there is more than one of them' : `that takes ${leastPins} pins of the same names`}; what the one carries is not known at the other`
      );
    }
  }
  return mated;
};

/** Names of pins that both have; none where one has pins beyond the other's. */
const sharedPins = (plug: Part, jack: Part): readonly string[] => {
  const [a, b] = [plug, jack].map(({ terminals }) =>
    Object.values(terminals).map(({ name }) => name)
  );
  if (!a || !b) return [];
  const shared = a.filter((name) => b.includes(name));
  return shared.length === Math.min(a.length, b.length) ? shared : [];
};
