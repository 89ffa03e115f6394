// A small program for trying the bench side on: it paints on the alternate screen, echoes keys and sizes, and leaves
// the terminal well or badly as it is told. It has nothing to do with a job.

const [manner = 'well'] = process.argv.slice(2);
const paint = (text: string): void => void process.stdout.write(`\u001b[2J\u001b[H${text}\r\n`);
const shownSize = (): string => `${process.stdout.columns}x${process.stdout.rows}`;

const leave = (code: number): never => {
  if (manner !== 'badly') {
    process.stdin.setRawMode(false);
    process.stdout.write('\u001b[?2004l\u001b[?25h\u001b[?1049l');
  }
  process.exit(code);
};

process.stdin.setRawMode(true);
process.stdout.write('\u001b[?1049h\u001b[?25l\u001b[?2004h');
process.stdout.on('resize', () => paint(`size ${shownSize()}`));
process.on('SIGTERM', () => leave(143));
process.on('SIGHUP', () => leave(129));
process.stdin.on('data', (bytes) => {
  if (bytes.toString() === 'q') leave(3);
  if (bytes.toString() === 'e')
    paint(`CI=${process.env.CI} NODE_ENV=${process.env.NODE_ENV} DATA=${process.env.COUNTBACK_DATA}`);
  else paint(`got ${bytes.toString('hex')}`);
});
// Said when everything is in its place: a test may send a signal at once.
paint(`ready ${shownSize()}`);
