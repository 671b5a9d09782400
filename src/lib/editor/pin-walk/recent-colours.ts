// The colours that were written down last, each with its tracer, newest first: in one set most leads
// have one of a few.
import type { Study } from '#study/index.ts';

export interface SeenColour {
  readonly colour: string;
  readonly tracer: string | null;
}

export const recentColours = (study: Study, limit: number): readonly SeenColour[] => {
  const seen = new Map<string, SeenColour>();
  for (const { found } of study.index.wires.toReversed()) {
    if (seen.size >= limit) break;
    const { colour, tracer } = found;
    if (colour === undefined || colour === '') continue;
    const key = `${colour}/${tracer ?? ''}`.toLowerCase();
    if (!seen.has(key)) seen.set(key, { colour, tracer: tracer === '' ? null : (tracer ?? null) });
  }
  return [...seen.values()];
};
