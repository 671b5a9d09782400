// Wire that came out of this very chassis, reckoned as stock: gauge, colour and length as they were found.
// What it is rated for is not taken over: old insulation gets no credit until somebody gives it one.
import { readsAsFailing } from '#checks/condition.ts';
import type { Id, Stock } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { wireName } from '../core/words.ts';
import type { StockDraft } from './read-stock-rows.ts';

/** Shorter than this nobody keeps it, mm. Common practice, no source. */
const leastMm = 150;

export interface Salvage {
  readonly wire: Id;
  readonly draft: StockDraft;
}

/** The wires that came out, are long enough, sound by what was written down, and not on the shelf yet. */
export function salvageOf(study: Study): readonly Salvage[] {
  const taken = new Set(
    Object.values(study.document.shelf).flatMap(({ outOf }: Stock) => outOf ?? [])
  );
  return study.index.wires.flatMap((wire): readonly Salvage[] => {
    const isOut =
      wire.state === 'removed' ||
      ((wire.state === 'fitted' || wire.state === 'checked') && wire.planned.way === 'new wire');
    const { awg, stranding, plating, colour, tracer, insulation, diameterMm, condition } =
      wire.found;
    const lengthMm = wire.tapedMm ?? study.wires.get(wire.id)?.length?.mm ?? 0;
    if (!isOut || taken.has(wire.id) || wire.isPart !== undefined || wire.cable !== undefined)
      return [];
    if (awg === undefined || lengthMm < leastMm) return [];
    if (condition !== undefined && readsAsFailing(condition)) return [];
    const fields = { awg, stranding, plating, colour, tracer, insulation, diameterMm };
    const known = Object.fromEntries(
      Object.entries(fields).filter(([, value]) => value !== undefined)
    );
    return [
      {
        wire: wire.id,
        draft: {
          ...known,
          name: `out of ${wireName(wire)}${colour === undefined ? '' : `, ${colour}`}`,
          kind: 'salvage',
          construction: wire.construction,
          lengthMm: Math.floor(lengthMm),
          outOf: wire.id,
          notes: 'Its old rating is not taken over: write one in only if you know it.'
        }
      }
    ];
  });
}
