// What the page's script has to know of wires and parts, beside what stands in the drawing.
import { severities, type Finding, type Severity } from '#checks/index.ts';
import { findColourHex } from '#handbook/index.ts';
import { styleOf } from '#drawing/styles.ts';
import { classBandOf, type Study } from '#study/index.ts';

export interface PageWire {
  readonly id: string;
  readonly number: string;
  /** "V3-5 to C4-1, heater". */
  readonly words: string;
  /** Of the insulation as found, to be shown; null where nobody wrote it down. */
  readonly colour: string | null;
  readonly tracer: string | null;
  readonly state: string;
  readonly worst: Severity | null;
  /** The ink of its insulation class. */
  readonly ink: string;
}

export interface PageData {
  readonly wires: readonly PageWire[];
  readonly parts: readonly { readonly id: string; readonly name: string; readonly words: string }[];
}

const hexOf = (text: string | undefined): string | null =>
  text === undefined ? null : findColourHex(text);

const worstByWire = (findings: readonly Finding[]): Map<string, Severity> => {
  const worst = new Map<string, Severity>();
  for (const { at, severity } of findings)
    for (const place of at) {
      if (place.kind !== 'wire') continue;
      const known = worst.get(place.id);
      if (known === undefined || severities.indexOf(severity) < severities.indexOf(known))
        worst.set(place.id, severity);
    }
  return worst;
};

export const buildPageData = (study: Study, findings: readonly Finding[]): PageData => {
  const worst = worstByWire(findings);
  const { labelOf } = study.index;
  return {
    wires: study.index.wires.map((wire) => ({
      id: wire.id,
      number: wire.number,
      words: [`${labelOf(wire.from)} to ${labelOf(wire.to)}`, wire.function ?? '']
        .filter((text) => text !== '')
        .join(', '),
      colour: hexOf(wire.found.colour),
      tracer: hexOf(wire.found.tracer),
      state: wire.state,
      worst: worst.get(wire.id) ?? null,
      ink:
        styleOf(`wire.${classBandOf(study.wires.get(wire.id)?.need?.requiredV ?? null)}`, 'light')
          .stroke ?? '#000000'
    })),
    parts: study.index.parts.map(({ id, reference, type, value, function: does }) => ({
      id,
      name: reference,
      words: [type ?? '', value ?? '', does ?? ''].filter((text) => text !== '').join(', ')
    }))
  };
};
