// The bare read as a program of its own.
import { readBare } from './read-file.ts';

process.stdout.write(`${readBare(process.argv[2] as string)} lines\n`);
