// Starts the store's child program (tests/store/child.ts) as a process of its own and says how it ended.
import { spawn } from 'node:child_process';

export type Ended = { output: string; signal: NodeJS.Signals | null; code: number | null };

export function runChild(child: string, args: readonly string[]): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const started = spawn(process.execPath, [child, ...args], { stdio: ['ignore', 'pipe', 'ignore'] });
    let output = '';
    started.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
    });
    started.on('error', reject);
    started.on('close', (code, signal) => resolve({ output, signal, code }));
  });
}
