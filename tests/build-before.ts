// Builds the bundle once before any test, so that what the terminal tests drive is what the sources say now.
import { bundle } from '../.build/bundle.js';

export async function setup(): Promise<void> {
  await bundle();
}
