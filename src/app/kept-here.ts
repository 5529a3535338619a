/** What is kept in this browser, with all that checks it: run through in a task of its own, after the first script. */
export { createLocalProfileStore } from './local-profile-store.js';
export { openDatabase } from './open-database.js';
