import canonicalFace from '../../../calibration/canonical-face.json';
import contactDepth from '../../../calibration/contact-depth.json';
import { createMeasureSweep } from '../../core/estimate/measure-sweep.js';
import type { SweepReply, SweepRequest } from '../../protocol/sweep-messages.js';
import { parseToSweepWorker } from '../../protocol/sweep-messages.js';
import { answerMessages } from '../message-loop.js';

const measureSweep = createMeasureSweep({ canonicalFace, contactDepth });

answerMessages<SweepRequest, SweepReply>(parseToSweepWorker, async ({ frames, settings }, work) => {
  // the adjustment lets no message in once it has begun: what is cancelled by now need not begin
  await work.checkCancelled();
  const startMs = performance.now();
  const measured = measureSweep(frames, settings, work.progress);
  const workMs = performance.now() - startMs;
  return measured.ok
    ? { kind: 'sweep-measured', measurement: measured.value, workMs }
    : { kind: 'sweep-failed', failure: measured.failure, workMs };
});
