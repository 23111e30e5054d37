import type { Units } from '../measure/length.ts';
import type { Language } from '../problem/language.ts';
import type { Terms } from '../problem/terms.ts';
import type { Profile } from '../profile/profile.ts';
import type { Head, Machine, Rules } from '../shop/shop.ts';
import type { KnifeReport } from './knife-report.ts';
import type { ProfileSetting } from './set-steel.ts';

/** What a knife is wanted for. Lengths mm, `tilt` in radians. */
export interface KnifeOrder {
  readonly name: string;
  readonly knife: string | null;
  readonly headName: string;
  readonly head: Head;
  /** What it leaves in the wood. */
  readonly profile: Profile;
  /** Its outline as taken off the steel, where it was; then that is the outline, and nothing is fitted. */
  readonly steel?: Profile;
  readonly tilt: number;
  /** Where the cut sets the profile, and on what stock. */
  readonly setting: ProfileSetting;
  readonly groundFor: KnifeReport['groundFor'];
  /** Whether what it is ground for was not given, and so assumed. */
  readonly assumed: boolean;
  /** Relief ground on its walls square to the spindle, radians, where the shop says. */
  readonly sideRelief?: number;
  readonly rules: Rules;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly units: Units;
  readonly terms?: Terms;
  readonly language?: Language;
  /** Its place in the file, for its problems. */
  readonly at: string;
}
