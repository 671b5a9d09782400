// The insulation classes that hook-up and high-voltage wire is commonly bought in, and what each
// is for. The steps that a document uses are its own policy; this is the reference beside them.

export interface LadderStep {
  readonly volts: number;
  /** What a restorer would use it for. */
  readonly use: string;
}

/** Common practice, no source. */
export const classLadder: readonly LadderStep[] = [
  { volts: 300, use: 'signal and heater wiring; nothing on a supply rail' },
  { volts: 600, use: 'supply rails and ordinary runs' },
  { volts: 1000, use: 'boosted rails, line side of power supplies' },
  { volts: 3000, use: 'plate leads of output stages, screens and yokes with small pulses' },
  { volts: 5000, use: 'yoke and damper leads, focus leads' },
  { volts: 10_000, use: 'horizontal output plate leads, second anodes of small picture tubes' },
  { volts: 15_000, use: 'second anode leads' },
  { volts: 20_000, use: 'second anode leads' },
  { volts: 25_000, use: 'second anode leads' },
  { volts: 30_000, use: 'second anode leads' },
  { volts: 40_000, use: 'second anode leads of large and projection picture tubes' }
];
