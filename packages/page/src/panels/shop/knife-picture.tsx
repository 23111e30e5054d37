import { readShopData, sweptOutline } from '@fielded/core';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import thumbStyles from '../../style/thumb.css?inline';

adoptStyles(thumbStyles);

/** Wood shown beyond the knife's reach and below its depth, mm. */
const BEYOND = 8;

/** A knife by its own section: what it leaves of a panel's edge at its own depth and reach. */
export function KnifePicture({ name }: { name: string }): JSX.Element | null {
  const { shop } = useDesk().doc.value;
  const data = shop?.data;
  const drawn = useMemo(() => {
    const knife = readShopData(data).shop?.knives[name];
    if (knife === undefined) return null;
    const { profile } = knife;
    const { reach, depth } = profile;
    const edge = sweptOutline({ name, side: 'front', profile, depth, reach, run: 'under', tilt: 0 });
    return { reach, depth, wood: `${edge}H${reach + BEYOND}V${depth + BEYOND}H0Z` };
  }, [data, name]);
  if (drawn === null) return null;
  return (
    <svg class="thumb" viewBox={`-1 -1 ${drawn.reach + BEYOND + 2} ${drawn.depth + BEYOND + 2}`} aria-hidden="true">
      <path class="thumb-panel" d={drawn.wood} />
    </svg>
  );
}
