// A lint rule of our own: quantities of different meaning are not added, subtracted or compared. TypeScript alone allows it,
// for to it a branded number is a number. What is meant, such as gauge plus air, is written with a plain number between.

const operators = new Set(["+", "-", "<", "<=", ">", ">=", "===", "!=="]);

/** The brand of a type of quantity/quantity.ts: what its unique symbol says. */
const brandOf = (checker, type) => {
  const parts = type.isUnion() ? type.types : [type];
  const brands = parts.flatMap((part) =>
    part
      .getProperties()
      .filter(({ escapedName }) => String(escapedName).startsWith("__@meaning@"))
      .map((property) => checker.typeToString(checker.getTypeOfSymbol(property))),
  );
  return brands.length === 0 ? undefined : [...new Set(brands)].sort().join(" or ");
};

export const mixedQuantities = {
  meta: {
    type: "problem",
    schema: [],
    messages: { mixed: "{{left}} {{operator}} {{right}}: quantities of different meaning do not meet." },
  },
  create: (context) => {
    const services = context.sourceCode.parserServices;
    const checker = services.program.getTypeChecker();
    return {
      BinaryExpression: (node) => {
        if (!operators.has(node.operator)) return;
        const left = brandOf(checker, services.getTypeAtLocation(node.left));
        const right = brandOf(checker, services.getTypeAtLocation(node.right));
        if (left === undefined || right === undefined || left === right) return;
        context.report({ node, messageId: "mixed", data: { left, right, operator: node.operator } });
      },
    };
  },
};
