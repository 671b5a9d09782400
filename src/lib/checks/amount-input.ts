// Figures of the study as the inputs of a reasoning, each with where it comes from.
import { formatAmps, formatAwg, formatCelsius, formatMm, formatVolts } from '#quantity/index.ts';
import type { Amount } from '#study/index.ts';
import type { ReasoningInput } from './finding.ts';

const basisOf = ({ basis, doubt }: Amount): string =>
  doubt === undefined ? basis : `${basis}; ${doubt} is not known`;

export const voltsInput = (name: string, amount: Amount): ReasoningInput => ({
  name,
  value: formatVolts(amount.value),
  basis: basisOf(amount)
});

export const ampsInput = (name: string, amount: Amount): ReasoningInput => ({
  name,
  value: formatAmps(amount.value),
  basis: basisOf(amount)
});

export const plainInput = (name: string, value: string, basis: string): ReasoningInput => ({
  name,
  value,
  basis
});

export const awgInput = (awg: number, basis: string): ReasoningInput =>
  plainInput('Gauge', formatAwg(awg), basis);

export const celsiusInput = (name: string, celsius: number, basis: string): ReasoningInput =>
  plainInput(name, formatCelsius(celsius), basis);

export const lengthInput = (name: string, mm: number, basis: string): ReasoningInput =>
  plainInput(name, formatMm(mm), basis);
