import { readJob, readShop, solve } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { broken, SOUND } from './job-texts.ts';
import { plainJob } from './joints-to-spread.ts';

const DOORS = 'doors: [{ width: 800, height: 700, stile: 60, rail: 60, across: 2, mullion: 50 }]\n';

describe("the trade's other names", () => {
  it('are read as the file names things', () => {
    const { job, faults } = readJob(
      broken('shape: cove, reach: 14, depth: 4.6, land: 9', 'shape: Rabbet, reach: 14, depth: 4.6'),
    );
    expect(faults.map(({ message }) => message)).toEqual([]);
    expect(job!.cuts[1]!.profile.shape).toBe('rebate');
    const groundFor = 'groundFor: { run: under, rotation: anticlockwise }';
    const shop = readShop(`fielded: 1\nknives: { k: { shape: rabbet, reach: 14, depth: 5, ${groundFor} } }\n`);
    expect(shop.faults).toEqual([]);
    expect(shop.shop!.knives.k!.groundFor!.rotation).toBe('counterclockwise');
  });

  it('a mullion is a muntin, and its faults are shown where it stands', () => {
    const read = readJob(SOUND + DOORS);
    expect(read.faults.map(({ message }) => message)).toEqual([]);
    expect(read.job!.doors[0]!.muntin).toBe(50);
    const { faults } = readJob(SOUND + DOORS.replace('mullion: 50', 'mullion: wide'));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({ code: 'not-a-length', received: 'wide' });
    expect(faults[0]!.line).toBe(SOUND.split('\n').length);
  });

  it('stay refused beside the name they stand for', () => {
    const { faults } = readJob(SOUND + DOORS.replace('mullion: 50', 'mullion: 50, muntin: 50'));
    expect(faults.map(({ code }) => code)).toEqual(['unknown-key']);
  });
});

describe('what is suggested for a name that is not known', () => {
  const suggested = (by: string) => {
    try {
      solve(plainJob(), { for: 'clearance', value: 0.2, by });
    } catch (error) {
      return /did you mean (.+)\?/.exec((error as Error).message)?.[1];
    }
    return 'known';
  };

  it.each([
    ['relief.depth', 'back relief.depth'],
    ['relief.dept', 'back relief.depth'],
    ['rase.reach', 'raise.reach'],
    ['frame.groove.with', 'frame.groove.width'],
    ['groove.width', 'frame.groove.width'],
    ['swellgap', 'frame.swellGap'],
  ])('%s is %s', (by, meant) => {
    expect(suggested(by)).toBe(meant);
  });

  it('a size is no stile', () => {
    const doors = 'doors: [{ width: 400, height: 700, size: 60, rail: 60 }]\n';
    const { faults } = readJob(SOUND + doors);
    expect(faults.map(({ message }) => message).join(' ')).not.toContain('Did you mean stile');
  });
});
