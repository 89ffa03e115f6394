// Who says a thing and why, as it is typed: plain strings, kept as they were said.
import * as z from 'zod';

export const reasonSchema = z.string().min(1).max(400);
export const personSchema = z.string().min(1).max(60);
