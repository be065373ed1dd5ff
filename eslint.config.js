import { readdirSync } from 'node:fs';
import svelte from 'eslint-plugin-svelte';
import tseslint from 'typescript-eslint';

/** Which zones a zone may use. The arrows go one way: ui → core; labels → core; main → labels, core; core → nothing. */
const ARROWS = { core: [], labels: ['core'], main: ['labels', 'core'], ui: ['core'] };
const ZONES = Object.keys(ARROWS);

/** The floors of core, the lowest first: a folder may use those before it, never one after it. */
const FLOORS = [
  'length',
  'outline',
  'movement',
  'words',
  'stages',
  'plan',
  'fields',
  'codes',
  'job',
  'marks',
  'measured',
  'settable',
  'telling',
  'api',
  'stickers',
  'shop',
  'joint',
  'survey',
  'planning',
  'fit',
  'queue',
  'pace',
  'drawing',
  'views',
];
const foldersIn = (path) =>
  readdirSync(new URL(path, import.meta.url), { withFileTypes: true }).flatMap((each) =>
    each.isDirectory() ? [each.name] : [],
  );
for (const folder of foldersIn('core'))
  if (!FLOORS.includes(folder)) throw new Error(`core/${folder} has no floor: put it into FLOORS`);

/**
 * The rooms of other folders, each with those beside it that it may use. Stickers and papers share the PDF alone. In the
 * store all stand on files, and on archives nobody.
 */
const ROOMS = {
  labels: { fonts: [], pdf: ['fonts'], stickers: ['pdf'], papers: ['pdf'] },
  'main/store': {
    files: [],
    documents: ['files'],
    // What the folder held, beside the rest.
    standing: ['files'],
    // A log entry of what was printed is written as the record of it reads it.
    log: ['files', 'folded'],
    folded: ['files', 'log', 'documents'],
    archive: ['files', 'log', 'documents', 'standing'],
  },
};
for (const [folder, rooms] of Object.entries(ROOMS))
  for (const room of foldersIn(folder))
    if (!Object.hasOwn(rooms, room)) throw new Error(`${folder}/${room} is no room: put it into ROOMS`);

const closedTo = (zone, more = []) => {
  const closed = [...ZONES.filter((other) => other !== zone && !ARROWS[zone].includes(other)), 'test'];
  return {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            // Without its backslash the first would be a comment.
            group: closed.flatMap((other) => [`\\#${other}/*`, `**/../${other}/**`]),
            message: `${zone} must not use this zone`,
          },
          { group: [`\\#${zone}/*`], message: `inside ${zone} import by relative path` },
          ...(zone === 'core' || zone === 'ui'
            ? [
                {
                  group: ['node:*', 'electron', 'fastify', 'lowdb', 'pino'],
                  message: `${zone} has no node in it`,
                },
              ]
            : []),
          ...more,
        ],
      },
    ],
  };
};

const arrows = ZONES.map((zone) => ({ files: [`${zone}/**/*.{ts,svelte,mjs}`], rules: closedTo(zone) }));

/** A folder of a zone from which others beside it are closed. */
const closedRoom = (folder, zone, others, message) => ({
  files: [`${folder}/**/*.ts`],
  rules: closedTo(zone, [{ group: others.map((other) => `**/../${other}/**`), message }]),
});

const floors = FLOORS.slice(0, -1).map((floor, k) =>
  closedRoom(`core/${floor}`, 'core', FLOORS.slice(k + 1), `core/${floor} stands below this floor`),
);

const rooms = Object.entries(ROOMS).flatMap(([folder, uses]) =>
  Object.keys(uses).map((room) =>
    closedRoom(
      `${folder}/${room}`,
      folder.split('/')[0],
      Object.keys(uses).filter((other) => other !== room && !uses[room].includes(other)),
      `${folder}/${room} must not use this room`,
    ),
  ),
);

/** The network is served over by the hub, and knows nothing of it. */
const network = closedRoom(
  'main/network',
  'main',
  foldersIn('main').filter((other) => other !== 'network' && other !== 'store'),
  'main/network uses the store alone',
);

/** Three words in a row: a sentence. Errors thrown are told to whoever mends the program, in English. */
const SENTENCE = '/[A-Za-z’]+[ ,:]+[A-Za-z’]+ [A-Za-z’]+/';
const sentences = {
  files: ['core/**/*.ts'],
  // The API’s description is an English document; why a length is not drawn is told to whoever draws.
  ignores: ['core/words/**', 'core/api/endpoints.ts', 'core/api/openapi.ts', 'core/views/not-drawn.ts'],
  rules: {
    'no-restricted-syntax': [
      'error',
      ...[`Literal[value=${SENTENCE}]`, `TemplateElement[value.raw=${SENTENCE}]`].map((text) => ({
        selector: `:not(ThrowStatement *)${text}`,
        message: 'what a person reads stands in core/words',
      })),
    ],
  },
};

export default tseslint.config(
  { ignores: ['dist', 'coverage', 'test-results', 'playwright-report', '**/*.d.ts'] },
  ...tseslint.configs.strictTypeChecked,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      parserOptions: {
        projectService: {
          allowDefaultProject: ['*.js', 'test/*.mjs', 'main/start/*.mjs'],
          maximumDefaultProjectFileMatchCount_THIS_WILL_SLOW_DOWN_LINTING: 30,
        },
        tsconfigRootDir: import.meta.dirname,
        extraFileExtensions: ['.svelte'],
      },
    },
    rules: {
      '@typescript-eslint/restrict-template-expressions': [
        'error',
        { allowNumber: true, allowBoolean: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': 'off',
      '@typescript-eslint/no-meaningless-void-operator': 'off',
      // Texts here are codes, names and numbers; characters, not emoji, are counted.
      '@typescript-eslint/no-misused-spread': 'off',
      // State is replaced whole ($state.raw), never changed in place.
      'svelte/prefer-svelte-reactivity': 'off',
      'svelte/no-navigation-without-resolve': 'off',
      '@typescript-eslint/no-unused-vars': [
        'error',
        { ignoreRestSiblings: true, varsIgnorePattern: '^_', argsIgnorePattern: '^_' },
      ],
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/require-await': 'off',
      'svelte/require-each-key': 'error',
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
  },
  { files: ['**/*.{js,mjs}'], extends: [tseslint.configs.disableTypeChecked] },
  // The drawing's SVG comes from core's renderer alone, which escapes every text.
  { files: ['ui/shared/DrawingView.svelte'], rules: { 'svelte/no-at-html-tags': 'off' } },
  sentences,
  ...arrows,
  ...floors,
  ...rooms,
  network,
);
