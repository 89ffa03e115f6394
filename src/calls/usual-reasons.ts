// Why a call is made that wants a reason: a few by number, so that a keypad has them; anything else is typed. Who works where
// says what is usual there: common practice, no source.

const byCall: Readonly<Record<string, readonly string[]>> = {
  reopen: ['something was forgotten', 'it came back', 'the owner wants more done', 'released by mistake'],
  'no-road': ['the owner drives it first', 'not registered for the road', 'goes on by trailer', 'ice on the road'],
  leaves: ['towed to another workshop', 'the owner fetches it', 'parts cannot be had'],
  accepted: ['within its limit', 'watched at the next service', 'the owner wants it so'],
  declined: ['too dear', 'at the next service', 'the car is to be sold'],
  'service-dropped': ['the owner does not want it', 'not needed after all', 'parts cannot be had'],
  'ruled-out': ['seen to fall outside', 'searched for, and not in it', 'counted wrongly before'],
  'leave-empty': ['not used on this model', 'was so on arrival', 'holds nothing any more'],
  disown: ['lay on the bench before', 'of another car', 'out of the stock'],
  condemned: ['worn', 'bent', 'thread gone', 'rusted'],
  substitute: ['as strong as the right one', 'the right one is on order', 'as it was supplied'],
};
export const usualReasons = (call: string): readonly string[] => byCall[call] ?? [];
/** Who says a thing that is the owner's to say, before whoever signed on this job. */
export const usuallySaidBy = (call: string): readonly string[] =>
  call === 'accepted' || call === 'declined' ? ['the owner'] : [];
/** Every call that has some. */
export const callsWithReasons: readonly string[] = Object.keys(byCall);
