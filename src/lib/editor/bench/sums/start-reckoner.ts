// A reckoner with its worker file as the build names it.
import { createReckoner, type Reckoner } from './reckoner.ts';

export const startReckoner = (): Reckoner =>
  createReckoner(
    () => new Worker(new URL('./reckon-worker.ts', import.meta.url), { type: 'module' })
  );
