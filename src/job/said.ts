// What a call says, once resolved against the screen: the verb and what it is about. The verbs table says what each takes.
export type Said = { verb: string } & Record<string, unknown>;
