// Which folder may import what. tests/architecture/import-rules.test.ts proves that offences are caught.

const TEST_FILE = '\\.test\\.tsx?$';
/** The tables as JSON, and the module that gives them their types; the scripts that derived them are no part of the app. */
const CALIBRATION_DATA = '^calibration/(.+\\.json|tables\\.ts)$';

/** What each folder may import besides itself; all other folders of the project are forbidden to it. */
const MAY_IMPORT = {
  'src/core': [],
  'src/protocol': ['^src/core/'],
  'src/workers': ['^src/core/', '^src/protocol/', '^src/session/', CALIBRATION_DATA],
  'src/service-worker': ['^src/core/', '^src/protocol/'],
  'src/sheets': ['^src/core/', CALIBRATION_DATA],
  'src/session': ['^src/core/', '^src/protocol/'],
  'src/devices': ['^src/core/', '^src/protocol/', '^src/session/'],
  'src/ui': ['^src/core/', '^src/session/', '^src/sheets/', CALIBRATION_DATA],
  'src/app': ['^src/(?!server/|service-worker/)', CALIBRATION_DATA],
  'src/server': ['^src/protocol/'],
  models: ['^src/core/'],
  calibration: ['^src/core/', '^models/'],
  tests: ['^(src|models|calibration)/'],
};

/** The order of the core: each folder may import itself and the ones named here. */
const CORE_ORDER = {
  units: ['geometry'],
  geometry: ['units'],
  statistics: ['units', 'geometry'],
  fitting: ['units', 'geometry', 'statistics'],
  catalogue: ['units', 'geometry', 'statistics', 'fitting'],
  reading: ['units', 'geometry', 'statistics', 'fitting', 'catalogue'],
  camera: ['units', 'geometry', 'statistics', 'fitting'],
  estimate: ['units', 'geometry', 'statistics', 'fitting', 'catalogue', 'reading', 'camera'],
  crosscheck: ['units', 'geometry', 'statistics', 'fitting', 'catalogue', 'reading', 'camera', 'estimate'],
  lenses: ['units', 'geometry', 'statistics', 'fitting', 'catalogue', 'reading', 'camera', 'estimate', 'crosscheck'],
  record: [
    'units',
    'geometry',
    'statistics',
    'fitting',
    'catalogue',
    'reading',
    'camera',
    'estimate',
    'crosscheck',
    'lenses',
  ],
};

const folderRules = Object.entries(MAY_IMPORT).map(([folder, allowed]) => ({
  name: `imports-of-${folder.replace('src/', '')}`,
  comment: `${folder} may import itself and: ${allowed.join(', ') || 'nothing else of the project'}.`,
  severity: 'error',
  from: { path: `^${folder}/`, pathNot: TEST_FILE },
  to: { path: '^(src|models|calibration|tests)/', pathNot: [`^${folder}/`, ...allowed] },
}));

const testRules = Object.entries(MAY_IMPORT)
  .filter(([folder]) => folder !== 'tests')
  .map(([folder, allowed]) => ({
    name: `imports-of-tests-beside-${folder.replace('src/', '')}`,
    comment: `Tests beside the code of ${folder} may import what it may, calibration data, and tests/support.`,
    severity: 'error',
    from: { path: `^${folder}/.*${TEST_FILE}` },
    to: {
      path: '^(src|models|calibration|tests)/',
      pathNot: [`^${folder}/`, ...allowed, CALIBRATION_DATA, '^tests/(support|fixtures)/'],
    },
  }));

const coreRules = Object.entries(CORE_ORDER).map(([folder, earlier]) => ({
  name: `order-of-core-${folder}`,
  comment: `src/core/${folder} may import core/result.ts, itself and: ${earlier.join(', ')}.`,
  severity: 'error',
  from: { path: `^src/core/${folder}/`, pathNot: TEST_FILE },
  to: {
    path: '^src/core/',
    pathNot: ['^src/core/result\\.ts$', ...[folder, ...earlier].map((name) => `^src/core/${name}/`)],
  },
}));

module.exports = {
  forbidden: [
    ...folderRules,
    ...testRules,
    ...coreRules,
    {
      name: 'core-knows-its-folders',
      comment: 'A new folder of the core takes its place in CORE_ORDER first.',
      severity: 'error',
      from: { path: '^src/core/[^/]+/', pathNot: `^src/core/(${Object.keys(CORE_ORDER).join('|')})/` },
      to: {},
    },
    {
      name: 'core-is-pure',
      comment: 'The core may use the linear algebra and the schema library, and nothing of Node or a framework.',
      severity: 'error',
      from: { path: '^src/core/', pathNot: TEST_FILE },
      to: {
        dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'core'],
        pathNot: 'node_modules/zod/',
      },
    },
    {
      name: 'vision-libraries-only-in-workers',
      comment:
        'MediaPipe and OpenCV stay off the page: in the app only workers import them. Scripts that run in Node may.',
      severity: 'error',
      from: { path: '^src/(?!workers/)' },
      to: { path: 'node_modules/(@mediapipe/tasks-vision|@techstark/opencv-js)/' },
    },
    {
      name: 'react-only-in-ui-and-app',
      comment: 'Everything below the screens can be used and tested without React.',
      severity: 'error',
      from: { pathNot: '^(src/ui/|src/app/|tests/|node_modules/)' },
      to: { path: 'node_modules/(@types/)?react(-dom)?/' },
    },
    {
      name: 'node-only-in-tools',
      comment: 'What runs in the browser cannot import modules of Node; tests and tools can.',
      severity: 'error',
      from: { path: '^src/(?!server/)', pathNot: TEST_FILE },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-cycles',
      comment: 'Two modules that import each other cannot be read one after the other.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolvable',
      comment: 'An import that cannot be found would slip through every other rule.',
      severity: 'error',
      from: { pathNot: 'node_modules/' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|coverage)/' },
    // Type-only imports count as well.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'browser', 'module', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'],
    },
  },
};
