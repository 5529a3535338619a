import { Worker } from 'node:worker_threads';
import type { Job, JobOutcomes } from './run-job.js';
import { runJob } from './run-job.js';

/** Threads that share work; one alone works on the calling thread. */
export interface WorkForce {
  /** The outcomes in the order of the jobs. Fails with the first error of a thread. */
  run<Kind extends Job['kind']>(jobs: readonly Extract<Job, { kind: Kind }>[]): Promise<readonly JobOutcomes[Kind][]>;
  end(): Promise<void>;
}

/** What a thread is sent and sends back; `number` is the job's place. */
export interface NumberedJob {
  readonly number: number;
  readonly job: Job;
}
export interface NumberedOutcome {
  readonly number: number;
  readonly outcome: JobOutcomes[Job['kind']];
}

export function createWorkForce(workerCount: number): WorkForce {
  const workers: Worker[] = [];
  const worker = (index: number): Worker =>
    (workers[index] ??= new Worker(new URL('./start-worker.mjs', import.meta.url)));
  return {
    run: async <Kind extends Job['kind']>(jobs: readonly Extract<Job, { kind: Kind }>[]) => {
      if (workerCount <= 1 || jobs.length <= 1) return jobs.map((job) => runJob(job) as JobOutcomes[Kind]);
      const outcomes: JobOutcomes[Kind][] = [];
      let next = 0;
      const keepBusy = async (index: number): Promise<void> => {
        for (let number = next++; number < jobs.length; number = next++) {
          const job = jobs[number];
          if (job !== undefined) outcomes[number] = (await hand({ number, job }, worker(index))) as JobOutcomes[Kind];
        }
      };
      await Promise.all(Array.from({ length: Math.min(workerCount, jobs.length) }, (_, index) => keepBusy(index)));
      return outcomes;
    },
    end: async () => {
      await Promise.all(workers.map((one) => one.terminate()));
    },
  };
}

function hand(job: NumberedJob, worker: Worker): Promise<NumberedOutcome['outcome']> {
  return new Promise((resolve, reject) => {
    const stop = (): void => {
      worker.off('message', take);
      worker.off('error', fail);
    };
    const take = ({ outcome }: NumberedOutcome): void => {
      stop();
      resolve(outcome);
    };
    const fail = (error: Error): void => {
      stop();
      reject(error);
    };
    worker.on('message', take);
    worker.on('error', fail);
    worker.postMessage(job);
  });
}
