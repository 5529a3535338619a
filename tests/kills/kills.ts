import { parseArgs } from 'node:util';
import { startBuiltApp } from '../support/built-app.js';
import { seededRandom } from '../support/seeded-random.js';
import { killWhileTyping } from './kill-while-typing.js';

// `npm run kills -- [--count N] [--seed N]`: kills the browser at random moments while someone types, and checks that nothing is
// lost that had been said to be saved. Drives the build in dist, or in the folder that GLABELLA_DIST names.

const { values } = parseArgs({
  options: { count: { type: 'string', default: '50' }, seed: { type: 'string', default: '1' } },
});
const [count, seed] = [Number(values.count), Number(values.seed)];
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(seed)) {
  throw new Error('npm run kills -- [--count N] [--seed N]');
}

const server = await startBuiltApp();
const kills = await killWhileTyping({
  address: server.address,
  count,
  random: seededRandom(seed),
  onKill: ({ number, afterMs, keystrokes, acknowledgements, inFlight, lost, broken }) => {
    const facts = `${keystrokes} keys, ${acknowledgements} saves said, ${inFlight} keys in flight, ${lost} lost`;
    console.log(
      `${number}: killed after ${afterMs} ms: ${facts}${broken.map((line) => `\n    BROKEN ${line}`).join('')}`,
    );
  },
}).finally(() => server.close());

const sum = (of: (kill: (typeof kills)[number]) => number): number =>
  kills.reduce((total, kill) => total + of(kill), 0);
const brokenKills = kills.filter(({ broken }) => broken.length > 0).length;
console.log(
  `${kills.length} kills, ${sum(({ keystrokes }) => keystrokes)} keystrokes, ${sum(({ acknowledgements }) => acknowledgements)} times said to be saved. ` +
    `At most ${Math.max(...kills.map(({ lost }) => lost))} keystrokes lost that were in flight. ` +
    `${brokenKills} times something was missing that had been said to be saved.`,
);
process.exitCode = brokenKills === 0 && kills.length === count ? 0 : 1;
