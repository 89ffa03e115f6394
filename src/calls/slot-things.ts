// Reading single things from words: a fastener, a finding, a stray, a piece, by its number or by where it is or came from.
import { likeInTray as likeIn } from '../job/choose.ts';
import { stateOf } from '../job/ledger.ts';
import { type Desk, fastenerOf, findingsOn } from './desk.ts';
import type { Token } from './form.ts';
import { joined, none, type Read } from './slot-names.ts';
import { readHole, readSubject, readTray } from './slot-places.ts';
import { readSpec } from './spec-words.ts';

export const readFastener: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^f\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  if (first.toLowerCase() === 'tray' && rest.length > 2) {
    const tray = readTray(desk, rest.slice(1), stops, args);
    const found =
      'why' in tray ? [] : tray.flatMap(({ value, used }) => likeInTray(desk, value as string, rest, used + 1));
    return found.length > 0 ? found : none('nothing like that lies in that tray');
  }
  const holes = readHole(desk, rest, stops, args);
  if ('why' in holes) return none(`"${first}" is no fastener: a hole, "tray NAME SPEC", or its f-number`);
  const found = holes.flatMap(({ value, used }) => {
    const id = fastenerOf(desk.ledger, value as string);
    return id ? [{ value: id, used }] : [];
  });
  return found.length > 0 ? found : none(`no fastener is known of ${joined(rest, 1)}`);
};
function likeInTray(desk: Desk, tray: string, rest: readonly Token[], at: number): { value: string; used: number }[] {
  const { spec, used } = readSpec(rest.slice(at));
  const id = likeIn(desk.ledger, tray, spec)?.id;
  return used > 0 && id ? [{ value: id, used: at + used }] : [];
}
/** By its d-number, or by what it is about when that has one open finding. */
export const readFinding: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^d\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  const about = readSubject(desk, rest, stops, args);
  if ('why' in about) return about;
  const found = about.flatMap(({ value, used }) => {
    const [only, second] = findingsOn(desk.ledger, value as string);
    return only && !second ? [{ value: only, used }] : [];
  });
  return found.length > 0
    ? found
    : none(`${joined(rest, rest.length)} has not one open finding: name it by its d-number`);
};

export const readStray: Read = (_desk, rest) =>
  /^s\d+\.\d+$/.test(rest[0]?.text ?? '')
    ? [{ value: rest[0]?.text, used: 1 }]
    : none('a stray is named by its s-number, as s12.1');
/** A fastener, or a stray by its s-number. */
export const readLying: Read = (desk, rest, stops, args) => {
  const stray = readStray(desk, rest, stops, args);
  return 'why' in stray ? readFastener(desk, rest, stops, args) : stray;
};
/** By its p-number, or by the hole that holds it when that holds one. */
export const readPiece: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^p\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  const holes = readHole(desk, rest, stops, args);
  const found = ('why' in holes ? [] : holes).flatMap(({ value, used }) => {
    const [only, second] = stateOf(desk.ledger, 'hole', value as string)?.called.pieces ?? [];
    return only && !second ? [{ value: only, used }] : [];
  });
  return found.length > 0
    ? found
    : none('a piece is named by the hole that holds it and no other, or by its p-number, as p12.1');
};
/** A lost fastener or piece, by its number or by its hole; alone when only one is lost. */
export const readLost: Read = (desk, rest, stops, args) => {
  const first = rest[0]?.text ?? '';
  if (/^[fp]\d+\.\d+$/.test(first)) return [{ value: first, used: 1 }];
  return readFastener(desk, rest, stops, args);
};
