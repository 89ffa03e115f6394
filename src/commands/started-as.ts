// How the program is called in the shell it was started from: what is told to be typed there is to work there.

/**
 * Source: npm 11, `npm help scripts` (npm_lifecycle_event, of a script that runs) and npm_command, "exec" of npx.
 * @param env of the process
 */
export function startedAs(env: Record<string, string | undefined>): string {
  if (env.npm_package_name !== 'countback') return 'countback';
  if (env.npm_command === 'exec') return 'npx countback';
  return env.npm_lifecycle_event === undefined ? 'countback' : 'npm start --';
}
