// Typed mathematics in the spelling a key has (itembank/marking/worth/typed_maths).
const LONE = ["Int", "Dec", "Sym", "Root"];
const bare1 = (node) => (node.k === "Bracket" ? node.of : node);
const tidy = (node) => tidied(bare1(node));

function tidied(node) {
  switch (node.k) {
    case "Int": case "Sym": case "Dec": case "Mixed": return node;
    case "Neg": {
      const of = tidied(node.of);
      return of.k === "Neg" ? of.of : Neg(of);
    }
    case "Bracket": {
      const of = tidied(node.of);
      return is(of, ...LONE) ? of : Bracket(of);
    }
    case "Frac": return tidyFrac(bare1(tidied(node.num)), bare1(tidied(node.den)));
    case "Percent": return Percent(tidied(node.of));
    case "Money": return outside((of) => Money(of, node.sign), tidied(node.amount));
    case "Quantity": return outside((of) => Quantity(of, node.unit), tidied(node.amount));
    case "Power": return Power(tidied(node.base), bare1(tidied(node.exponent)));
    case "Root": return Root(bare1(tidied(node.of)), node.index);
    case "Juxt": return tidyJuxt(node.factors.map(tidied));
    case "Sum": return tidySum(bare1(tidied(node.first)), node.rest.map(([op, term]) => [op, tidied(term)]));
    case "Product": return tidyProduct(node);
    case "Listing": return Listing(node.parts.map((part) => bare1(tidied(part))));
    case "Ratio": case "Either":
      return make(node.k, node.parts.map((part) => bare1(tidied(part))));
    case "Relation":
      return Relation(bare1(tidied(node.first)), node.rest.map(([op, side]) => [op, bare1(tidied(side))]));
  }
  return withParts(node, tidied);
}
function unsignedFactor(node) {
  const inner = bare1(node);
  return inner.k === "Neg" ? inner.of : node;
}
const outside = (put, amount) => (amount.k === "Neg" ? Neg(put(amount.of)) : put(amount));
function tidyFrac(top, bottom) {
  if (bottom.k === "Neg" && bottom.of.k === "Int" && is(top, "Int", "Neg")) {
    return tidyFrac(top.k === "Neg" ? top.of : Neg(top), bottom.of);
  }
  if (top.k === "Neg" && top.of.k === "Int" && bottom.k === "Int") return Neg(Frac(top.of, bottom));
  return Frac(top, bottom);
}
function tidySum(head, rest) {
  const terms = [];
  for (const [op, term] of rest) {
    const inner = bare1(term);
    if (inner.k === "Neg") terms.push([op === "+" ? "-" : "+", inner.of]);
    else if (op === "+" && inner.k === "Sum") terms.push(["+", inner.first], ...inner.rest);
    else terms.push([op, is(inner, "Sum", "Product") ? term : inner]);
  }
  if (head.k === "Sum") return Sum(head.first, [...head.rest, ...terms]);
  return Sum(head, terms);
}
function tidyJuxt(factors) {
  const flat = [], alone = factors.filter((factor) => !hasLetters(factor)).length === 1;
  let negative = false;
  for (let factor of factors) {
    let inner = bare1(factor);
    if (inner.k === "Neg" && inner.of.k !== "Sum") {
      negative = !negative;
      factor = inner = inner.of;
    }
    if (inner.k === "Juxt") flat.push(...inner.factors);
    else if ((is(inner, "Frac", "Mixed") && !hasLetters(inner) && alone) || is(inner, "Power", ...LONE)) flat.push(inner);
    else flat.push(factor);
  }
  const numbers = flat.filter((f) => is(f, "Int", "Dec", "Frac", "Mixed") && !hasLetters(f));
  if (numbers.length === 1) {
    flat.splice(flat.findIndex((f) => eq(f, numbers[0])), 1);
    flat.unshift(numbers[0]);
  }
  const node = flat.length === 1 ? flat[0] : Juxt(flat);
  return negative ? Neg(node) : node;
}
function tidyProduct(node) {
  const head = tidied(node.first), rest = node.rest.map(([op, factor]) => [op, tidied(factor)]);
  const factors = [head, ...rest.map(([, factor]) => factor)];
  if (!hasLetters(node) && !factors.some((f) => is(bare1(f), "Root", "Juxt"))) return Product(head, rest);
  if (rest.every(([op]) => op === "×")) {
    const flat = factors.map(unsignedFactor).reduce((all, g) => all.concat(g.k === "Juxt" ? g.factors : [g]), []);
    const LEAD = ["Int", "Dec", "Frac", "Mixed"];
    if (flat.filter((f) => is(bare1(f), ...LEAD)).length <= 1 &&
        flat.every((f) => is(f, "Int", "Dec", "Sym", "Power", "Root", "Bracket", "Frac", "Mixed"))) {
      return tidyJuxt(factors);
    }
  } else if (rest.length === 1 && rest[0][0] === "÷") return tidyFrac(bare1(head), bare1(rest[0][1]));
  return Product(head, rest);
}
const alike = (a, b) => eq(a, b) || sortedForm(a) === sortedForm(b);
// A text that two trees share exactly where they differ in the order of terms and factors alone.
function sortedForm(node) {
  const list = (head, all) => `${head}<${all.join(";")}>`;
  switch (node.k) {
    case "Sum": {
      const flat = [["+", node.first], ...node.rest].map(([op, term]) =>
        term.k === "Neg" ? [op === "+" ? "-" : "+", term.of] : [op, term]);
      return list("sum", flat.map(([op, term]) => op + sortedForm(term)).sort());
    }
    case "Juxt": return list("product", node.factors.map(sortedForm).sort());
    case "Product":
      if (opsOf(node).every((op) => op === "×")) return list("product", sidesOf(node).map(sortedForm).sort());
      break;
    case "Either": return list("either", node.parts.map(sortedForm).sort());
    case "Listing": case "Ratio": return list(node.k, node.parts.map(sortedForm));
    case "Relation":
      return list("relation", [sortedForm(node.first), ...node.rest.map(([op, side]) => op + sortedForm(side))]);
    case "Neg": case "Bracket": case "Percent": return list(node.k, [sortedForm(node.of)]);
    case "Frac": return list("fraction", [sortedForm(node.num), sortedForm(node.den)]);
    case "Power": return list("power", [sortedForm(node.base), sortedForm(node.exponent)]);
    case "Money": return list("money", [sortedForm(node.amount), node.sign]);
    case "Quantity": return list("quantity", [sortedForm(node.amount), node.unit]);
    case "Dec":
      if (!node.recurring) {
        const places = node.places.replace(/0+$/, "");
        return places ? Dec(node.whole.replace(/^0+/, "") || "0", places).id : Int(node.whole).id;
      }
      return node.id;
  }
  const below = children(node);
  return below.length ? list(frame(node).id, below.map(sortedForm)) : node.id;
}
