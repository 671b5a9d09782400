// Runs in a worker of its own: lays out what it is sent, and says how far it is.
import { LayoutError } from '#drawing/index.ts';
import { createElkEngine } from './elk-engine.ts';
import { layOutHere, type LayoutTask, type LayoutWord } from './lay-out.ts';

const layOut = layOutHere(createElkEngine());
const say = (word: LayoutWord): void => self.postMessage(word);

self.onmessage = ({ data }: MessageEvent<LayoutTask>): void => {
  layOut(data, {
    signal: new AbortController().signal,
    onProgress: (progress) => say({ kind: 'progress', progress })
  }).then(
    (layout) => say({ kind: 'done', layout }),
    (error: unknown) =>
      say({
        kind: 'failed',
        why: error instanceof LayoutError ? error.why : null,
        words: error instanceof Error ? error.message : String(error)
      })
  );
};
