// The code of compiled schemas without its error objects: two thirds of its length, which costs start-up time. A key
// that is left blank counts as one that is not there, wherever the format has such a key.
import ts from "typescript";

/**
 * @param code of validators that stop at the first error, as ajv writes them
 * @returns the functions as a module; they answer true or false and set no errors
 */
export function yesOrNo(code) {
  const imports = [];
  const body = code.replaceAll(/const (\w+) = require\("([^"]+)"\)\.default;/g, (_, name, module) => {
    imports.push(`import ${name}Module from "${module}.js";`);
    return `const ${name} = ${name}Module.default ?? ${name}Module;`;
  });
  // After a validator of its own for a part, the number of errors is that of the list, which is not kept.
  const counted = body.replaceAll("errors = vErrors.length", "errors++");
  const { factory } = ts;
  const withoutErrors = (context) => (file) => {
    const visit = (node) => {
      if (makesErrors(node)) return factory.createEmptyStatement();
      const inside = ts.visitEachChild(node, visit, context);
      return asksForKey(node)
        ? factory.createBinaryExpression(inside.left, looseOf(node), factory.createNull())
        : inside;
    };
    return ts.visitNode(file, visit);
  };
  const file = ts.createSourceFile("fits.js", counted, ts.ScriptTarget.ES2022, true);
  const { transformed } = ts.transform(file, [withoutErrors]);
  const lean = ts.createPrinter().printFile(transformed[0]);
  if (/\brequire\(|\bkeyword:|\bvErrors\b(?! = null)|[!=]== undefined/.test(lean))
    throw new Error("the compiled schemas are written in a way that is not known");
  return `${imports.join("\n")}\n${lean}`;
}

/** `data.ears !== undefined`: is the key there? */
const asksForKey = (node) =>
  ts.isBinaryExpression(node) &&
  ts.isPropertyAccessExpression(node.left) &&
  node.right.getText() === "undefined" &&
  looseOf(node) !== undefined;

/** `!=` of `!==`, which with null asks for a key that has a value. */
const looseOf = ({ operatorToken }) =>
  ({
    [ts.SyntaxKind.ExclamationEqualsEqualsToken]: ts.SyntaxKind.ExclamationEqualsToken,
    [ts.SyntaxKind.EqualsEqualsEqualsToken]: ts.SyntaxKind.EqualsEqualsToken,
  })[operatorToken.kind];

/** Statements that only make, collect or store error objects. */
function makesErrors(node) {
  if (ts.isVariableStatement(node)) return /^(?:const|let|var) err\d+ =/.test(node.getText());
  if (ts.isIfStatement(node)) return /^if\s*\(vErrors [=!]== null\)/.test(node.getText());
  return (
    ts.isExpressionStatement(node) &&
    ts.isBinaryExpression(node.expression) &&
    /^(?:vErrors|validate\d+\.errors)$/.test(node.expression.left.getText())
  );
}
