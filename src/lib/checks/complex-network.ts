// Admittances at one frequency, reduced to those between a few terminals: every other node is taken out,
// star to mesh, the one with the fewest neighbours first.

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });

export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re
});

export function divide(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

export const magnitude = ({ re, im }: Complex): number => Math.hypot(re, im);

export interface Admittance {
  readonly from: number;
  readonly to: number;
  /** Siemens. */
  readonly value: Complex;
}

export const nothing: Complex = { re: 0, im: 0 };

/** What is left between the terminals, in siemens, by `${a} ${b}` with the smaller number first. */
export function reduceTo(
  terminals: readonly number[],
  admittances: readonly Admittance[]
): ReadonlyMap<string, Complex> {
  const at = new Map<number, Map<number, Complex>>();
  const neighboursOf = (node: number): Map<number, Complex> => {
    const known = at.get(node);
    if (known) return known;
    const made = new Map<number, Complex>();
    at.set(node, made);
    return made;
  };
  const put = (a: number, b: number, value: Complex): void => {
    if (a === b) return;
    const [near, far] = [neighboursOf(a), neighboursOf(b)];
    const sum = add(near.get(b) ?? nothing, value);
    near.set(b, sum);
    far.set(a, sum);
  };
  for (const { from, to, value } of admittances) put(from, to, value);
  const kept = new Set(terminals);
  const inner = [...at.keys()].filter((node) => !kept.has(node));
  while (inner.length > 0) {
    let place = 0;
    for (let n = 1; n < inner.length; n++) {
      if (neighboursOf(inner[n] ?? -1).size < neighboursOf(inner[place] ?? -1).size) place = n;
    }
    const [node = -1] = inner.splice(place, 1);
    const around = [...neighboursOf(node)];
    const total = around.reduce((sum, [, value]) => add(sum, value), nothing);
    at.delete(node);
    for (const [neighbour] of around) at.get(neighbour)?.delete(node);
    if (magnitude(total) === 0) continue;
    around.forEach(([a, near], n) => {
      for (const [b, far] of around.slice(n + 1)) put(a, b, divide(multiply(near, far), total));
    });
  }
  const left = new Map<string, Complex>();
  for (const a of terminals) {
    for (const [b, value] of at.get(a) ?? []) if (a < b) left.set(`${a} ${b}`, value);
  }
  return left;
}
