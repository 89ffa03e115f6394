// A bare Ink program to measure beside: a frame of the same size with the same ways of painting, one text of which
// changes with every key. It knows no job. Given a job file, it first reads, links, parses and checks it.
import { Box, render, Text, useInput, useWindowSize } from 'ink';
import { type ReactNode, useState } from 'react';
import { readBare } from './read-file.ts';

const still = 'the quick brown fox stands beside the car and counts its bolts ';

function Bare({ lines }: { lines: number }): ReactNode {
  const { columns, rows } = useWindowSize();
  const [keys, setKeys] = useState(0);
  useInput(() => setKeys((n) => n + 1));
  return (
    <Box flexDirection='column' width={columns} height={rows}>
      {Array.from({ length: rows - 1 }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place
        <Text key={i} wrap='truncate'>
          {`${i} ${still.repeat(3)}`.slice(0, columns)}
        </Text>
      ))}
      <Text wrap='truncate'>{`bare ${lines} lines, ${keys} keys`.padEnd(columns)}</Text>
    </Box>
  );
}

const [path] = process.argv.slice(2);
render(<Bare lines={path === undefined ? 0 : readBare(path)} />, {
  alternateScreen: true,
  incrementalRendering: true,
  maxFps: 60,
  exitOnCtrlC: true,
  patchConsole: false,
  interactive: true,
});
