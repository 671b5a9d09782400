// Places in a chassis by what people call them: "23", "V5-4", "6CG7", "yellow", "6 V", "over 1 kV".
import { parseQuantity } from '#quantity/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { Pick } from '../core/pick.ts';
import { carriesText, colourText, counted, needText } from '../core/words.ts';
import { best } from './rank.ts';

export interface PlaceFound {
  readonly pick: Pick;
  readonly title: string;
  readonly detail: string;
}

export interface PlacesFound {
  readonly places: readonly PlaceFound[];
  /** What the list leaves out: more than fit, or wires of which it is not known; empty: nothing. */
  readonly leftOut: string;
}

/** "6 V" finds 6.3 V: figures on old drawings are round. */
const near = 0.1;

const wirePlace = (study: Study, id: string): PlaceFound => {
  const wire = study.document.wires[id];
  const about = study.wires.get(id);
  const { labelOf } = study.index;
  const ends = wire === undefined ? '' : `${labelOf(wire.from)} to ${labelOf(wire.to)}`;
  const colour = wire === undefined ? '' : colourText(wire.found.colour, wire.found.tracer);
  return {
    pick: { kind: 'wire', id },
    title: `Wire ${wire?.number || 'without a number'}`,
    detail: [ends, colour, `needs ${needText(about?.need ?? null)}`].filter(Boolean).join(', ')
  };
};

const standsNear = ({ carries }: WireStudy, volts: number): boolean =>
  [carries.dcV, carries.acV, carries.pulseV].some(
    (amount) => amount !== null && Math.abs(Math.abs(amount.value) - volts) <= near * volts
  );

type WireTest = (about: WireStudy) => boolean | null;

// Null: for this wire it is not known.
const testOf = (typed: string): WireTest | null => {
  const bound = /^(over|above|under|below)\s+(.+)$/i.exec(typed);
  const parsed = parseQuantity(bound?.[2] ?? typed, 'voltage');
  // A bare number is a wire's.
  if (!parsed.ok || !/\d\s*k?v/i.test(typed)) return null;
  const volts = parsed.value;
  if (bound === null) return (about) => (about.stress === null ? null : standsNear(about, volts));
  const isOver = /^(over|above)$/i.test(bound[1] ?? '');
  return ({ stress }) =>
    stress === null
      ? null
      : isOver
        ? stress.volts > volts
        : !stress.atLeast && stress.volts < volts;
};

const byVolts = (study: Study, test: WireTest, limit: number): PlacesFound => {
  const answers = [...study.wires.values()].map((about) => ({ about, is: test(about) }));
  const fitting = answers
    .filter(({ is }) => is === true)
    .sort((a, b) => (b.about.stress?.volts ?? 0) - (a.about.stress?.volts ?? 0));
  const unknown = answers.filter(({ is }) => is === null).length;
  return {
    places: fitting.slice(0, limit).map(({ about }) => wirePlace(study, about.id)),
    leftOut: [
      fitting.length > limit ? counted(fitting.length - limit, 'more wire') : '',
      unknown > 0 ? `of ${counted(unknown, 'wire')} it is not known` : ''
    ]
      .filter(Boolean)
      .join('; ')
  };
};

interface Named {
  readonly texts: readonly string[];
  readonly place: () => PlaceFound;
}

const namedPlaces = (study: Study): readonly Named[] => {
  const { index, document } = study;
  const parts = index.parts.map((part): Named => ({
    texts: [part.reference, part.type ?? '', part.value ?? '', part.kind].filter(Boolean),
    place: () => ({
      pick: { kind: 'part', id: part.id },
      title: part.reference,
      detail: [part.kind, part.type, part.value, document.units[part.unit]?.name]
        .filter(Boolean)
        .join(', ')
    })
  }));
  const wires = index.wires.map((wire): Named => ({
    texts: [
      wire.number,
      `wire ${wire.number}`,
      colourText(wire.found.colour, wire.found.tracer),
      wire.function ?? '',
      wire.notes ?? '',
      carriesText(study.wires.get(wire.id)?.carries ?? nothing)
    ].filter(Boolean),
    place: () => wirePlace(study, wire.id)
  }));
  const terminals = index.terminals.map((entry): Named => {
    const text = terminalText(document, entry);
    return {
      texts: [text, `${entry.part.reference}-${entry.terminal.name}`],
      place: () => ({
        pick: { kind: 'terminal', id: entry.key },
        title: text,
        detail: wiresEnding((index.wiresAt.get(entry.key) ?? []).length)
      })
    };
  });
  return [...wires, ...parts, ...terminals];
};

const wiresEnding = (count: number): string =>
  `${counted(count, 'wire')} ${count === 1 ? 'ends' : 'end'} here`;

const nothing: WireStudy['carries'] = { dcV: null, acV: null, pulseV: null, amps: null };

/** @param limit how many places at most */
export const searchPlaces = (study: Study, typed: string, limit: number): PlacesFound => {
  const text = typed.trim();
  if (text === '') return { places: [], leftOut: '' };
  const named = best(namedPlaces(study), text, ({ texts }) => texts, limit + 1);
  const test = testOf(text);
  if (test !== null) {
    // A part that is called so stands before all wires that stand at it: "6V6", "B+ 285 V".
    const first = named.slice(0, 2).map(({ place }) => place());
    const found = byVolts(study, test, limit - first.length);
    const isFirst = (id: string): boolean => first.some(({ pick }) => pick.id === id);
    const rest = found.places.filter(({ pick }) => !isFirst(pick.id));
    return { ...found, places: [...first, ...rest] };
  }
  return {
    places: named.slice(0, limit).map(({ place }) => place()),
    leftOut: named.length > limit ? 'there are more: type another word' : ''
  };
};
