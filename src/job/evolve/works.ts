// What each entry does to circuits, findings and services.
import type { Entry } from '../entry.ts';
import type { CircuitState, FindingState, ServiceState } from '../states.ts';
import { type Misfit, misfit } from './misfit.ts';

export function evolveCircuit(
  before: CircuitState | undefined,
  entry: Entry,
  n: number,
  circuit: string,
): CircuitState {
  const c: CircuitState = before ?? { circuit, drainedAt: 0, filledAt: 0, checkedAt: 0 };
  switch (entry.kind) {
    case 'circuit-declared':
      return { ...c, fluid: entry.fluid };
    case 'fluid-drained':
      return { ...c, drainedAt: n };
    case 'fluid-filled':
      return { ...c, fluid: entry.fluid, filledAt: n, ...(entry.litres !== undefined && { litres: entry.litres }) };
    case 'leak-checked':
      return { ...c, checkedAt: n, checkedHow: entry.how };
    default:
      return c;
  }
}

export function evolveFinding(f: FindingState | undefined, entry: Entry, n: number, id: string): FindingState | Misfit {
  if (entry.kind === 'finding-made') {
    const { at, what, when, fastener } = entry;
    return f ? misfit : { id, at, what, when, ...(fastener && { fastener }), madeAt: n };
  }
  if (!f) return misfit;
  if (entry.kind === 'owner-told') {
    const { said, how } = entry;
    const tellings = [...(f.tellings ?? []), { n, said, ...(how && { how }) }];
    return { ...f, told: said || 'told', tellings };
  }
  if (entry.kind !== 'finding-closed' || f.closed || f.at !== entry.at) return misfit;
  const { how, who, because } = entry;
  return { ...f, closed: { n, how, ...(who && { who }), ...(because && { because }) } };
}

export function evolveService(
  s: ServiceState | undefined,
  entry: Entry,
  _n: number,
  service: string,
): ServiceState | Misfit {
  switch (entry.kind) {
    case 'service-ordered': {
      const { kind: _, ...ordered } = entry;
      return { ...ordered, service, state: 'ordered' };
    }
    case 'service-done':
      return s ? { ...s, state: 'done' } : misfit;
    case 'service-dropped':
      return s ? { ...s, state: 'dropped', because: entry.because } : misfit;
    default:
      return s ?? misfit;
  }
}
