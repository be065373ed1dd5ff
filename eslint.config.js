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
  'telling',
  'api',
  'stickers',
  'shop',
  'joint',
  'survey',
  'measured',
  'planning',
  'queue',
  'pace',
  'drawing',
  'views',
];
const folders = readdirSync(new URL('core', import.meta.url), { withFileTypes: true }).flatMap((each) =>
  each.isDirectory() ? [each.name] : [],
);
for (const folder of folders)
  if (!FLOORS.includes(folder)) throw new Error(`core/${folder} has no floor: put it into FLOORS`);

const closedTo = (zone, more = []) => {
  const closed = [...ZONES.filter((other) => other !== zone && !ARROWS[zone].includes(other)), 'test'];
  return {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            group: closed.flatMap((other) => [`#${other}/*`, `**/../${other}/**`]),
            message: `${zone} must not use this zone`,
          },
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

const floors = FLOORS.slice(0, -1).map((floor, k) => ({
  files: [`core/${floor}/**/*.ts`],
  rules: closedTo('core', [
    {
      group: FLOORS.slice(k + 1).map((above) => `**/../${above}/**`),
      message: `core/${floor} stands below this floor`,
    },
  ]),
}));

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
  ...arrows,
  ...floors,
);
