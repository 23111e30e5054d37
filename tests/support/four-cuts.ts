/** A job of four cuts, two of them with knives of examples/shop, for doors in a wood that moves. */
export const FOUR_CUTS = `fielded: 1
title: Four cuts and a shop
shop: shop.yaml
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
season: { made: 8, driest: 6, dampest: 11 }
spread: { thickness: 0.2, height: 0.1 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }, run: under, head: raiser }
  - { name: relief, side: back, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }, run: over, head: small }
  - { name: quirk, side: front, knife: rebate-10, reach: 40, depth: 1, run: under }
  - { name: softening, side: back, knife: old-hollow, reach: 17, depth: 1, run: over }
doors:
  - { name: pair, quantity: 2, width: 420, height: 720, stile: 60, rail: 70 }
`;
