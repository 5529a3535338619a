import { parentPort } from 'node:worker_threads';
import { runJob } from './run-job.js';
import type { NumberedJob, NumberedOutcome } from './work-force.js';

parentPort?.on('message', ({ number, job }: NumberedJob) => {
  const outcome: NumberedOutcome = { number, outcome: runJob(job) };
  parentPort?.postMessage(outcome);
});
