import tseslint from "typescript-eslint";
import { mixedQuantities } from "./tests/architecture/mixed-quantities.mjs";

const evaluating = {
  group: ["mathjs", "mathjs/*"],
  importNamePattern: "^(evaluate|compile|parser|simplify|derivative|import)",
  message: "mathjs only splits a formula into its tree; it never computes.",
  allowTypeImports: true,
};

const brands =
  "AbsolutePressure|GaugePressure|PressureDifference|Temperature|Length|Speed|Volume|Area|Quantity";

const everywhere = [
  { selector: "ExportDefaultDeclaration", message: "Exports have names." },
  {
    selector: "MemberExpression[property.name=/^(evaluate|compile)$/]",
    message: "mathjs only splits a formula into its tree; it never computes.",
  },
];

const inPackages = [
  ...everywhere,
  {
    selector: `TSAsExpression > TSTypeReference[typeName.name=/^(${brands})$/]`,
    message: "A number becomes a quantity by a constructor of quantity/, which checks it.",
  },
  { selector: "TSAsExpression > TSAsExpression.expression", message: "A cast over a cast hides a mistake." },
];

const inCommand = [
  ...inPackages,
  {
    selector: "CallExpression[callee.object.name='process'][callee.property.name='exit']",
    message: "process.exit cuts off what is still being written: set process.exitCode.",
  },
];

export default tseslint.config(
  { ignores: ["**/node_modules/", "**/dist/", "**/sealtrend-demo/", "coverage/", "data/"] },
  {
    files: ["packages/*/src/**/*.ts", "tests/**/*.ts"],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { project: "./tsconfig.json", tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    plugins: { sealtrend: { rules: { "mixed-quantities": mixedQuantities } } },
    rules: {
      "sealtrend/mixed-quantities": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      eqeqeq: "error",
      "no-control-regex": "error",
      "no-param-reassign": "error",
      "@typescript-eslint/no-restricted-imports": ["error", { patterns: [evaluating] }],
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      // `return fault(...)` ends a function on one line.
      "@typescript-eslint/no-confusing-void-expression": "off",
      // A text is spread where its characters are meant.
      "@typescript-eslint/no-misused-spread": "off",
    },
  },
  { files: ["packages/core/src/**/*.ts"], rules: { "no-restricted-syntax": ["error", ...inPackages] } },
  { files: ["packages/cli/src/**/*.ts"], rules: { "no-restricted-syntax": ["error", ...inCommand] } },
  {
    // What computes never casts; text becomes values in record/, numbers become quantities in quantity/.
    files: ["packages/core/src/**/*.ts"],
    ignores: ["packages/core/src/{problem,quantity,record}/**"],
    rules: { "@typescript-eslint/consistent-type-assertions": ["error", { assertionStyle: "never" }] },
  },
  {
    files: ["packages/core/src/quantity/**/*.ts"],
    rules: { "no-restricted-syntax": ["error", ...everywhere] },
  },
  {
    files: ["tests/**/*.ts"],
    rules: {
      "no-restricted-syntax": ["error", ...everywhere],
      "@typescript-eslint/restrict-template-expressions": "off",
    },
  },
);
