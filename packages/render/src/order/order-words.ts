import { formatNumber, type KnifeReport, type Report } from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import { spokenLength } from '../words/lengths.ts';

type Units = Report['units'];

/** A line of the order's list: what it is, and what is wanted. `confirm` marks what nobody said: it is not ground before it is confirmed. */
export interface OrderLine {
  readonly what: string;
  readonly wanted: string;
  readonly confirm?: boolean;
}

/** Everything a grinder has to know of a knife besides its outline. */
export function orderLines(knife: KnifeReport, units: Units): OrderLine[] {
  const say = (mm: number) => spokenLength(mm, units);
  const { run, rotation } = knife.groundFor;
  const long = knife.length + Math.max(knife.overrun.edge, knife.overrun.face);
  return [
    { what: 'wanted', wanted: `${knife.count} alike: one set for the head ${safeText(knife.head)}` },
    {
      what: 'hand',
      wanted: `cutter ${run} the stock, turning ${rotation} seen from above; drawn as seen on the cutting face`,
      confirm: knife.assumed,
    },
    { what: 'this side up', wanted: upperSide(knife), confirm: knife.assumed },
    { what: 'steel', wanted: `${say(knife.thickness)} thick` },
    {
      what: 'blank',
      wanted: `at least ${say(knife.width)} wide and ${say(long)} long from the tip line, and what the head clamps`,
    },
    { what: 'cutting circle', wanted: `${say(2 * knife.cuttingRadius)} at the longest tip` },
    { what: 'rake, shear', wanted: `${degrees(knife.rake)} at the tip, ${shearWords(knife)}` },
    { what: 'wedge', wanted: `${degrees(knife.wedge)} between face and ground back` },
    {
      what: 'clearance',
      wanted: `${degrees(knife.clearance.least)} behind the edge where it is least`,
    },
    { what: 'panel', wanted: heldWords(knife) },
    {
      what: 'overrun',
      wanted: `${say(knife.overrun.edge)} past the panel's edge, ${say(knife.overrun.face)} past its face: in the outline already`,
    },
  ];
}

/** Which end of the knife is the upper one on the machine. */
function upperSide({ groundFor, presented }: KnifeReport): string {
  if (presented === 90) return 'the end that cuts farthest in from the edge';
  const deep = groundFor.run === 'under';
  return deep ? 'the end that cuts deepest, at the tongue' : "the end that cuts at the panel's face";
}

function shearWords({ shear }: KnifeReport): string {
  if (shear === 0) return 'no shear';
  return `shear ${degrees(Math.abs(shear))}, the deep end ${shear > 0 ? 'trailing' : 'leading'}`;
}

function heldWords({ presented }: KnifeReport): string {
  if (presented === 0) return 'flat on the table';
  return presented === 90 ? 'on edge, against a tall fence' : `spindle tilted ${degrees(presented)}`;
}

function degrees(angle: number): string {
  return `${formatNumber(angle, 1)}°`;
}
