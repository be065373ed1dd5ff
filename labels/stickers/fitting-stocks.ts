import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { labelIn, stickerPlace } from '#core/stickers/sticker-place.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import type { SymbolKind } from '../pdf/symbol.ts';
import { stockNamed } from './stock-in-points.ts';
import { symbolFits } from './symbol-size.ts';

/** The names of the stocks on which a code's symbol can be read. */
export function stocksThatRead(kind: SymbolKind, code: string, stocks: Stocks): string[] {
  return Object.keys(stocks).filter((name) => {
    const stock = stockNamed(name, stocks);
    return stock !== null && symbolFits(kind, code, stock);
  });
}

/**
 * For each part, told once for all that are alike (those with the same key): the stocks on which its sticker stays clear
 * and its symbol is read.
 */
export function fittingStocks(plan: Plan, stocks: Stocks, kind: SymbolKind) {
  const known = new Map<string, readonly string[]>();
  return (door: PlanDoor, part: PlanPart, key: string): readonly string[] => {
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    const fits = stocksThatRead(kind, part.code, stocks).filter((name) => {
      const spec = stocks[name];
      if (spec === undefined) return false;
      return stickerPlace(door, part, plan.units, labelIn(spec, plan.units)).state === 'clear';
    });
    known.set(key, fits);
    return fits;
  };
}
