// A bare Ink program that paints the very rows of the demo job before and after a call, in turn, one frame a key. It knows
// no job and keeps nothing: what it takes is what painting such a screen takes.
import { readFileSync } from 'node:fs';
import { Box, render, useInput, useWindowSize } from 'ink';
import { type ReactNode, useState } from 'react';
import { PaintedRow } from '../../../src/screen/rows.tsx';

const [path = ''] = process.argv.slice(2);
const frames = JSON.parse(readFileSync(path, 'utf8')) as [string[], string[]];

function Same(): ReactNode {
  const { columns, rows } = useWindowSize();
  const [keys, setKeys] = useState(0);
  useInput(() => setKeys((n) => n + 1));
  return (
    <Box flexDirection='column' width={columns} height={rows}>
      {frames[keys % 2 === 0 ? 0 : 1].map((painted, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place
        <PaintedRow key={i} painted={painted} />
      ))}
    </Box>
  );
}

render(<Same />, {
  alternateScreen: true,
  incrementalRendering: true,
  maxFps: 240,
  exitOnCtrlC: true,
  patchConsole: false,
  interactive: true,
});
