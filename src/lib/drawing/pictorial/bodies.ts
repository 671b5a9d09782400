// Components that hang by their leads: how big the body is, and how it looks. Sizes are those of the
// period, a little small so that the wires beside them stay visible; from memory, for the picture only.
import type { Part } from '#document/index.ts';

export interface Body {
  /** `roll`: a wound or moulded tube; `disc`: a ceramic; `coil`: turns on a form; `plain`: any other. */
  readonly shape: 'roll' | 'disc' | 'coil' | 'plain';
  /** Along the leads, mm. */
  readonly length: number;
  readonly width: number;
}

function resistorBody(watts: number): Body {
  if (watts <= 0.5) return { shape: 'roll', length: 9.5, width: 3.6 };
  if (watts <= 1) return { shape: 'roll', length: 12, width: 4.6 };
  if (watts <= 2) return { shape: 'roll', length: 14, width: 5.6 };
  return { shape: 'plain', length: 20, width: 6.4 };
}

function capacitorBody(farads: number): Body {
  if (farads < 3e-9) return { shape: 'disc', length: 8, width: 8 };
  if (farads < 1e-6) return { shape: 'roll', length: 14, width: 6 };
  return { shape: 'roll', length: 20, width: 8 };
}

/** The body of a component, by its electrical elements where they say how big it is. */
export function bodyOf(part: Part, leads: number): Body {
  for (const element of Object.values(part.elements ?? {})) {
    if (element.kind === 'resistor' && part.kind === 'resistor') {
      return resistorBody(typeof element['watts'] === 'number' ? element['watts'] : 0.5);
    }
    if (element.kind === 'capacitor' && part.kind === 'capacitor') {
      const farads = typeof element['farads'] === 'number' ? element['farads'] : 1e-8;
      return leads > 2 ? { shape: 'roll', length: 22, width: 9 } : capacitorBody(farads);
    }
  }
  switch (part.kind) {
    case 'resistor':
      return resistorBody(0.5);
    case 'capacitor':
      return capacitorBody(leads > 2 ? 1e-5 : 1e-8);
    case 'coil':
      return { shape: 'coil', length: 11, width: 5.4 };
    case 'fuse':
      return { shape: 'plain', length: 18, width: 5 };
    default:
      return { shape: 'plain', length: 11, width: 5 };
  }
}
