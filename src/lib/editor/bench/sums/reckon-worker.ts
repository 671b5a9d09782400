// The worker's side of the reckoner: one question in, one answer out.
import { workHere, type Question } from './reckoner.ts';

addEventListener('message', ({ data }: MessageEvent<{ ticket: number; question: Question }>) => {
  postMessage({ ticket: data.ticket, answer: workHere(data.question) });
});
