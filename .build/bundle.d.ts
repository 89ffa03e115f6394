/** Builds dist/countback.js from src/main.tsx, or another bundle the same way; `entry` is seen from the package's root. */
export function bundle(entry?: string, whole?: string): Promise<void>;
