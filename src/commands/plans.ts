// The plans shipped with the program, as the calls need them.
import type { PlanOffer } from '../calls/desk.ts';

export async function shippedPlans(_packageRoot: URL): Promise<PlanOffer[]> {
  return [];
}
