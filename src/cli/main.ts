// The program: one call of the command line on the words that it was started with.
import { run } from './run.ts';

// A reader that stops early, such as `head`, is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  say: (line) => process.stderr.write(`${line}\n`)
});
