import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take longer than larger ones, by what they start or try: a run that began one of them last would end with it alone. */
const LONG = [
  'packaging/packs',
  'regressions/fuzz',
  'cli/hostile-size',
  'render/renderers',
  'core/read-bounds',
  'properties/advice',
  'render/pdf',
  'render/svg',
  'exchange/docx',
  'cli/completion',
  'core/can-be-read',
  'properties/knives-never-throw',
  'render/every-word',
  'render/layout-sheets',
  'packaging/first-programs',
];

/** These before the others, and both as long as an earlier run took, the longest first; where there was none, the largest first. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => LONG.some((name) => moduleId.endsWith(`/${name}.test.ts`));
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}
