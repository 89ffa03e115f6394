/** Builds dist/countback.js from src/main.tsx. */
export function bundle(): Promise<void>;
