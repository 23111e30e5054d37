import { describe, expect, it } from 'vitest';
import { createDesk } from '../../packages/page/src/desk/create-desk.ts';
import { exampleFor } from '../../packages/page/src/job/start.ts';

const job = (title: string) => ({
  data: { ...(exampleFor('en-GB') as Record<string, never>), title },
  source: null,
  fileName: 'job.yaml',
  shop: null,
});

describe('What is half typed', () => {
  it('goes with the job that it was typed for, when the opening of that job is undone', () => {
    const desk = createDesk(job('before'));
    desk.replace(job('after'));
    desk.change([['panel.thickness', 21]]);
    desk.drafts.value = { 'frame.groove.width': '6 + 1/' };
    desk.undo();
    expect(desk.doc.value.data).toMatchObject({ title: 'after' });
    expect(desk.drafts.value).toEqual({ 'frame.groove.width': '6 + 1/' });
    desk.undo();
    expect(desk.doc.value.data).toMatchObject({ title: 'before' });
    expect(desk.drafts.value).toEqual({});
    desk.drafts.value = { 'frame.groove.width': '7 +' };
    desk.redo();
    expect(desk.doc.value.data).toMatchObject({ title: 'after' });
    expect(desk.drafts.value).toEqual({});
  });
});
