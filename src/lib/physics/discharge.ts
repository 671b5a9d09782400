// How long a charged capacitor stays dangerous, what it holds, and how that compares with what a
// published standard allows to be touched. Only resistors that are known count: cold tubes are no load.
import { checkedNumber } from './guard.ts';
import { SumError } from './sum-error.ts';

export interface DischargeInputs {
  readonly capacitanceF: number;
  readonly resistanceOhm: number;
  readonly fromV: number;
  readonly toV: number;
}

export interface Discharge {
  readonly timeS: number;
  readonly energyJ: number;
  readonly chargeC: number;
}

const volts = { min: 0, max: 200_000, above: true, unit: 'V' };
const farads = { min: 0, max: 10, above: true, unit: 'F' };

/** Time for a capacitor to fall from one voltage to another through a resistor, and its energy and
 *  charge at the start.
 *  Formula:  t = R C ln(V0 / V); E = C V0^2 / 2; Q = C V0
 *  Source:   discharge of a capacitor through a resistor
 *  Valid:    C above 0 to 10 F, R above 0 to 1e12 ohm, from >= to above 0; otherwise SumError
 *  Example:  discharge({ capacitanceF: 1e-4, resistanceOhm: 1e5, fromV: 350, toV: 60 }).timeS // 17.63589
 */
export function discharge(inputs: DischargeInputs): Discharge {
  const capacitance = checkedNumber('capacitance', inputs.capacitanceF, farads);
  const resistance = checkedNumber('resistance', inputs.resistanceOhm, {
    min: 0,
    max: 1e12,
    above: true,
    unit: 'ohm',
    wayOut: 'With no resistor known across it, treat the capacitor as charged.'
  });
  const fromV = checkedNumber('from', inputs.fromV, volts);
  const toV = checkedNumber('to', inputs.toV, volts);
  if (toV > fromV) {
    throw new SumError({
      problem: 'out of range',
      input: 'to',
      value: `${toV} V`,
      limit: `above 0 up to ${fromV} V, where it starts`,
      wayOut: 'Give the voltage that it is to fall to.'
    });
  }
  return {
    timeS: resistance * capacitance * Math.log(fromV / toV),
    ...storedOn(capacitance, fromV)
  };
}

/** Energy and charge of a capacitor at a voltage. */
export function storedOn(
  capacitanceF: number,
  atV: number
): { readonly energyJ: number; readonly chargeC: number } {
  const capacitance = checkedNumber('capacitance', capacitanceF, farads);
  const voltage = checkedNumber('volts', atV, { ...volts, above: false });
  return { energyJ: (capacitance * voltage * voltage) / 2, chargeC: capacitance * voltage };
}

export interface TouchLimit {
  /** True where what is stored goes past the published limit. Under it is not said to be safe. */
  readonly isOver: boolean;
  readonly words: string;
}

/** What is stored against the limits for parts that may be touched, in words.
 *  Source:   IEC 60335-1 clause 8.1.4 as quoted: to 42.4 V any; to 450 V 0.1 uF; to 15 kV 45 uC; above 350 mJ
 *  Valid:    C above 0 to 10 F, 0 to 200 kV; otherwise SumError
 *  Example:  touchLimit(2e-9, 20000).isOver // true
 */
export function touchLimit(capacitanceF: number, atV: number): TouchLimit {
  const { energyJ, chargeC } = storedOn(capacitanceF, atV);
  if (atV <= 42.4) return { isOver: false, words: 'at or below 42.4 V' };
  if (atV <= 450) {
    return compare(capacitanceF * 1e6, 0.1, 'µF', 'between 42.4 and 450 V');
  }
  if (atV <= 15_000) return compare(chargeC * 1e6, 45, 'µC', 'between 450 V and 15 kV');
  return compare(energyJ * 1e3, 350, 'mJ', 'above 15 kV');
}

function compare(amount: number, limit: number, unit: string, where: string): TouchLimit {
  const isOver = Number(amount.toPrecision(9)) > limit;
  const shown = `${Number(amount.toPrecision(4))} ${unit}`;
  const side = isOver ? 'over' : 'not over';
  return { isOver, words: `${shown} is ${side} the limit of ${limit} ${unit} ${where}` };
}
