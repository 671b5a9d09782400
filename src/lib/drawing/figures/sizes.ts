// Sizes of the diagram in millimetres, at the scale it is printed at: one place for all of them.

/** Text sizes. */
export const type = {
  unit: 4.2,
  reference: 3.3,
  kind: 2.3,
  small: 1.9,
  pin: 1.8,
  number: 2.05,
  step: 1.7
} as const;

/** The box that a wire's number stands in. */
export const numberBox = { height: 2.9, pad: 0.7, gap: 0.75, round: 0.6 } as const;

/** Room that each end takes along the side of a part. */
export const pitch = { line: 2.4, mark: 3.5, component: 4.9, gather: 3.2 } as const;

/** A component's words stand above it: it lies this far below the middle of its room. */
export const componentDrop = 0.75;

/** A row of a strip, plug or transformer. */
export const row = { height: 4.8 } as const;

/** The height of a row that holds `mm`, in whole pitches; even with an odd count of lines and odd with
 *  an even one, so that lines around its middle stand on lanes. */
export const rowRoom = (mm: number, lines: number): number => {
  const pitches = Math.ceil(mm / pitch.line - 1e-6);
  return (pitches + (lines > 0 && (pitches + lines) % 2 === 0 ? 1 : 0)) * pitch.line;
};

/** A socket's pin circle. */
export const ring = { pinCircle: 8.2, pin: 1.5, body: 10.4, room: 3.2 } as const;

/** A component with two leads. */
export const twoLead = { body: 7.6, half: 1.5, lead: 1.8 } as const;
