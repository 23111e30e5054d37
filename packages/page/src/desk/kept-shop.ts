import { readShopData } from '@fielded/core';
import type { ShopDoc } from './doc.ts';

const KEY = 'fielded.shop';

/** Keeps the shop in this browser, for jobs begun later. */
export function keepShop(shop: ShopDoc): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(shop));
  } catch {
    // The job keeps its own copy of it.
  }
}

/** The shop kept in this browser; null for none that can be read. */
export function keptShop(): ShopDoc | null {
  try {
    const shop = JSON.parse(localStorage.getItem(KEY) ?? 'null') as ShopDoc | null;
    if (typeof shop?.name !== 'string' || typeof shop.text !== 'string') return null;
    return readShopData(shop.data).faults.length === 0 ? shop : null;
  } catch {
    return null;
  }
}
