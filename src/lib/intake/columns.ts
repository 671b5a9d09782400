// What a column of a wire list can hold, and the units that its heading can name.

export type ColumnRole =
  | 'number'
  | 'from'
  | 'to'
  /** Both ends in one cell: "V3-5 to TS2-1". */
  | 'both'
  | 'fromPart'
  | 'toPart'
  | 'fromTerminal'
  | 'toTerminal'
  | 'fromType'
  | 'toType'
  | 'fromUnit'
  | 'toUnit'
  | 'fromEnding'
  | 'toEnding'
  | 'fromStrip'
  | 'toStrip'
  | 'unit'
  | 'function'
  | 'colour'
  | 'tracer'
  | 'gauge'
  | 'stranding'
  | 'rating'
  | 'ratingC'
  | 'insulation'
  | 'style'
  | 'plannedColour'
  | 'plannedTracer'
  | 'plannedGauge'
  | 'plannedRating'
  | 'plannedInsulation'
  | 'plannedStyle'
  | 'planned'
  | 'way'
  | 'volts'
  | 'dcV'
  | 'acV'
  | 'pulseV'
  | 'amps'
  | 'length'
  | 'cable'
  | 'conductor'
  | 'condition'
  | 'state'
  | 'notes'
  | 'type'
  | 'origin'
  | 'dress'
  | 'sleeve'
  | 'critical'
  /** Worked out by a schedule from other columns: not read. */
  | 'derived'
  /** Kept under its heading. */
  | 'extra';

/** Headings that mean the first end where they stand first, and the second where they stand again. */
export type PairedRole = 'end' | 'part' | 'terminal';

export interface Column {
  readonly index: number;
  readonly role: ColumnRole;
  /** As it stands in the list; "column 7" where it has none. */
  readonly heading: string;
  /** The unit of bare numbers, from the heading. */
  readonly unit: string | null;
}
