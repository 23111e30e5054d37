/// <reference path="../types.d.ts" />
import { evaluate, type Job, type Report } from '@fielded/core';
import type { Asked } from './asked.ts';
import EngineWorker from './engine-worker.ts?worker&inline';

/** Evaluates jobs in a worker, or on the page where there can be none; `done` is called for the last job asked for. */
export function createBeside(done: (job: Job, report: Report) => void): (job: Job) => void {
  let worker: Worker | null = null;
  let working: Job | null = null;
  let wanted: Job | null = null;
  const alone = (job: Job) => {
    worker?.terminate();
    worker = null;
    setTimeout(() => finish(job, evaluate(job)));
  };
  const finish = (job: Job, report: Report) => {
    working = null;
    if (wanted === job) done(job, report);
    else if (wanted !== null) send(wanted);
  };
  const send = (job: Job) => {
    working = job;
    try {
      const own: Worker = worker ?? new EngineWorker();
      worker = own;
      own.onmessage = ({ data }: MessageEvent<Report>) => finish(job, data);
      own.onerror = () => alone(job);
      own.postMessage({ ask: 'whole', job } satisfies Asked);
    } catch {
      alone(job);
    }
  };
  return (job) => {
    wanted = job;
    if (working === null) send(job);
  };
}
