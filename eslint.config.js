import reactHooks from 'eslint-plugin-react-hooks';
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** Words that the glossary of DEVELOPERS.md replaces; they may not begin or end an identifier that is declared here. */
const REFUSED_WORDS = '^(patient|customer|client|optometrist)([A-Z]|$)|(Patient|Customer|Optometrist)([A-Z]|$)';
const DECLARATIONS = [
  'VariableDeclarator',
  'FunctionDeclaration',
  'ClassDeclaration',
  'TSInterfaceDeclaration',
  'TSTypeAliasDeclaration',
];

export default defineConfig(
  globalIgnores(['dist/', 'node_modules/', 'coverage/', 'models/assembled/']),
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: {
        // The nearest tsconfig.json that includes a file decides which libraries it may know.
        projectService: true,
        tsconfigRootDir: import.meta.dirname,
      },
    },
    linterOptions: { reportUnusedDisableDirectives: 'error' },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'smart'],
      'no-restricted-syntax': [
        'error',
        ...DECLARATIONS.map((declaration) => ({
          selector: `${declaration}[id.name=/${REFUSED_WORDS}/]`,
          message:
            'Use the word of the glossary: wearer, reader, gauge, reading, measurement, card, estimate, finding.',
        })),
        {
          selector: ':matches(FunctionDeclaration, VariableDeclarator)[id.name=/^get[A-Z]/]',
          message: 'Name it for what it gives or does: find…, measure…, fit…, parse….',
        },
      ],
    },
  },
  {
    files: ['src/ui/**/*.{ts,tsx}', 'src/app/**/*.{ts,tsx}'],
    extends: [reactHooks.configs.flat.recommended],
  },
);
