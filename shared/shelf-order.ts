/** The orders in which the shelf of offcuts may stand. */
export const SHELF_ORDERS = ['newest', 'largest', 'smallest', 'place', 'design'] as const;

export type ShelfOrder = (typeof SHELF_ORDERS)[number];
