// What entries about pieces broken off, about what is lost and about strays do to the second ledger. Returns false when
// one does not fit.
import type { PlainEntry } from './plain.ts';
import { freshFastener, movedAt, trayNow, type World } from './world.ts';

export function happenToPiecesAndStrays(world: World, entry: PlainEntry): boolean {
  switch (entry.kind) {
    case 'piece-moved':
    case 'piece-lost': {
      const piece = world.pieces.get(entry.piece);
      if (piece === undefined || piece.at !== entry.from || entry.to === entry.from) return false;
      piece.at = entry.kind === 'piece-lost' ? 'lost' : entry.to;
      piece.ruledOut = false;
      movedAt(world, entry.from);
      movedAt(world, piece.at);
      return true;
    }
    case 'search-made':
    case 'loss-ruled-out': {
      const lost = world.fasteners.get(entry.lost) ?? world.pieces.get(entry.lost);
      if (lost === undefined || lost.at !== 'lost') return false;
      if (entry.kind === 'loss-ruled-out') lost.ruledOut = true;
      return true;
    }
    case 'stray-found': {
      if (world.strays.has(entry.stray)) return false;
      world.strays.set(entry.stray, { at: entry.at, settled: false });
      // Only now it is known of; it lay there before.
      if (entry.at.startsWith('tray:')) trayNow(world, entry.at.slice('tray:'.length)).everHeld = true;
      return true;
    }
    case 'stray-moved': {
      const stray = world.strays.get(entry.stray);
      if (stray === undefined || stray.settled || stray.at !== entry.from || entry.to === entry.from) return false;
      stray.at = entry.to;
      // Nothing moved: it lay there before.
      if (entry.to.startsWith('tray:')) trayNow(world, entry.to.slice('tray:'.length)).everHeld = true;
      return true;
    }
    case 'stray-settled': {
      const stray = world.strays.get(entry.stray);
      if (stray === undefined || stray.settled || stray.at !== entry.at) return false;
      stray.settled = true;
      // Given to a hole, it lies where it lay and has a fastener's name from now on: nothing moved.
      if (entry.as !== 'given') {
        movedAt(world, stray.at);
        stray.at = entry.as === 'scrapped' ? 'scrap' : 'owner';
      } else if (entry.fastener !== undefined) {
        const given = freshFastener(entry, stray.at, 'stray');
        given.spec = entry.spec ?? {};
        world.fasteners.set(entry.fastener, given);
        stray.at = 'a hole';
      }
      return true;
    }
    default:
      return true;
  }
}
