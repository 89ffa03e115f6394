// The parts box, parts that are off, the trays with what lies in them, and the scrap pile. What lies in a tray is told by
// sorts, never by number: the eye counts first (K1).
import { boxDiffersBy } from '../../job/box-needs.ts';
import { countStands, differsAgain, lyingOnPile, pileDiffersBy, pileOf } from '../../job/counts.ts';
import type { StrayState } from '../../job/hole-states.ts';
import { every, stateOf } from '../../job/ledger.ts';
import type { BoxState, PartState, TrayState } from '../../job/states.ts';
import { areaOf, named, subjectText } from '../../job/subjects.ts';
import type { Desk } from '../desk.ts';
import type { Listed } from '../listed.ts';
import { specWords } from '../spec-words.ts';
import { boxLeads, boxWords } from './box-words.ts';
import { pileLeads, pileWords, strayLeads, strayWords, trayLeads, trayWords } from './leftover.ts';

export function boxRows(desk: Desk): Listed[] {
  const parts = [...every(desk.ledger, 'part')].filter((p) => p.off || (p.replacedAt > 0 && !p.judged));
  const lost = [...every(desk.ledger, 'fastener'), ...every(desk.ledger, 'piece')].filter(
    (one) => one.loss && !one.loss.ruledOut,
  );
  return [
    ...[...every(desk.ledger, 'box')].map((b) => boxRow(desk, b)),
    ...parts.toSorted((a, b) => Number(isToJudge(b)) - Number(isToJudge(a))).map(partRow),
    ...[...every(desk.ledger, 'tray')].flatMap((t) => [trayRow(desk, t), ...lying(desk, t)]),
    ...lost.map(
      (one): Listed => ({
        key: `lost ${one.id}`,
        mark: 'open',
        name: 'lost',
        text: 'spec' in one ? `${specWords(one.spec)}  of ${subjectText(one.origin)}` : `a piece of ${one.fastener}`,
        end: `${one.id}${one.loss?.reaches ? ', can reach the works' : ''}`,
        picks: { lost: one.id },
      }),
    ),
    ...pileRow(desk),
  ];
}

/** A new one is there for it, or comes: these are judged first, and the wheel not at all. */
const isToJudge = (p: PartState): boolean => !p.judged && (p.replacedAt > 0 || p.declared?.renew === true);

function boxRow(desk: Desk, b: BoxState): Listed {
  const leads = boxLeads(desk, b);
  const differs = boxDiffersBy(b);
  return {
    key: `box ${b.name}`,
    mark: b.left > 0 || differs !== 0 ? 'open' : 'done',
    name: 'box',
    text: `${b.name}${b.spec && specWords(b.spec) !== b.name ? `  ${specWords(b.spec)}` : ''}${b.replaces ? `  for ${b.replaces}` : ''}`,
    end: `${b.left} of ${b.bought} left${differs === 0 ? '' : `, counted ${b.counted?.count}: count again`}`,
    more: () => boxWords(desk, b),
    picks: { box: b.name, ...(b.replaces ? { part: b.replaces } : {}) },
    ...(leads !== undefined && { leads }),
  };
}

const partRow = (p: PartState): Listed => ({
  key: `part ${p.part}`,
  mark: 'open',
  name: 'part',
  text: p.part,
  end: p.off
    ? p.judged
      ? `off, old one ${p.judged.verdict}`
      : p.declared?.renew
        ? 'off, to be renewed'
        : 'off'
    : 'old one to be judged',
  picks: { part: p.part },
});

function trayRow(desk: Desk, t: TrayState): Listed {
  const leads = trayLeads(desk, t);
  return {
    key: `tray ${t.tray}`,
    mark: t.contents.length > 0 || (t.everUsed && !countStands(t)) ? 'half' : 'done',
    name: 'tray',
    text: t.tray,
    end: countWords(t),
    more: () => trayWords(desk, t),
    // A tray whose count agrees is not the one to be counted next, wherever the cursor stands.
    picks: countStands(t) ? {} : { tray: t.tray },
    ...(leads !== undefined && { leads }),
  };
}

/** The count, and the ledger's figure only after it (K1). */
function countWords(t: TrayState): string {
  if (!t.counted || t.counted.n <= t.movedAt) return t.everUsed ? 'to be counted' : 'empty';
  const { count } = t.counted;
  if (countStands(t)) return `counted ${count}`;
  return `counted ${count}, the ledger has ${t.contents.length}${differsAgain(t) ? '' : ': count again'}`;
}

/** The scrap pile, where there is one; its figure, like that of a tray, after the eye's (K1). */
function pileRow(desk: Desk): Listed[] {
  const { counted } = pileOf(desk.ledger);
  const lie = lyingOnPile(desk.ledger);
  if (lie === 0 && counted === undefined) return [];
  const differs = pileDiffersBy(desk.ledger);
  const leads = pileLeads(desk);
  return [
    {
      key: 'pile',
      mark: differs === 0 ? 'plain' : 'open',
      name: 'scrap',
      text: 'scrap pile',
      end: pileCountWords(counted?.count, differs),
      more: () => pileWords(desk),
      picks: {},
      ...(leads !== undefined && { leads }),
    },
  ];
}
function pileCountWords(count: number | undefined, differs: number): string {
  if (count === undefined) return 'not counted';
  return differs === 0 ? `counted ${count}` : `counted ${count}, the ledger had ${count - differs}: count again`;
}

/** One row for fasteners that are alike and of one area; strays each by themselves. */
function lying(desk: Desk, t: TrayState): Listed[] {
  const seen = new Set<string>();
  return t.contents.flatMap((id): Listed[] => {
    const f = stateOf(desk.ledger, 'fastener', id);
    if (!f) {
      const s = stateOf(desk.ledger, 'stray', id);
      return s ? [strayRow(desk, s)] : [];
    }
    const hole = named('hole', f.origin);
    const of = hole === undefined ? subjectText(f.origin) : areaOf(hole);
    const end = f.broken ? 'broken' : f.condemned ? 'condemned' : '';
    const alike = `${specWords(f.spec)}  of ${of} ${end}`;
    if (seen.has(alike)) return [];
    seen.add(alike);
    const text = `${specWords(f.spec)}  of ${of}`;
    return [{ key: id, mark: end ? 'open' : 'plain', name: '', text, end, picks: { fastener: id } }];
  });
}

/** Chosen, it leads to where it most likely belongs (K3). */
function strayRow(desk: Desk, s: StrayState): Listed {
  const leads = strayLeads(desk, s.id);
  return {
    key: s.id,
    mark: 'open',
    name: '',
    text: `${specWords(s.spec)}  stray ${s.id}`,
    end: subjectText(s.place),
    more: () => strayWords(desk, s),
    picks: { stray: s.id },
    ...(leads !== undefined && { leads }),
  };
}
