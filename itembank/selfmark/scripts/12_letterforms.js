// The forms of expressions and of answers in several parts (itembank/items/forms/letter_forms,
// power_forms, factor_forms, answer_forms).
const LIKE_TERMS = "like terms are not collected", CANCELS = "a fraction can be cancelled";
const NOT_SOLVED = "it is not a letter, a sign and a number", NOT_A_PRODUCT = "it is not a product";
const first = (list, rule) => {
  for (const one of list) {
    const fault = rule(one);
    if (fault) return fault;
  }
  return "";
};
const ZERO_OR_ONE = (node) => eq(node, Int(0)) || eq(node, Int(1));

function expressionFault(node) {
  if (is(node, "Relation", "Ratio", "Listing", "Either", "Label")) return "it is not an expression";
  if (!hasLetters(node)) return finishedNumber(node);
  switch (node.k) {
    case "Sym": case "Blank": return "";
    case "Neg":
      if (bareOf(node.of).k === "Neg") return TWO_MINUSES;
      return expressionFault(node.of);
    case "Bracket": case "Percent": case "Root": return expressionFault(node.of);
    case "Money": case "Quantity": return expressionFault(node.amount);
    case "Power":
      if (node.base.k === "Bracket" && node.base.of.k !== "Sum") return "a bracket of one term is left raised to a power";
      if (ZERO_OR_ONE(node.exponent)) return "a power of 0 or 1 is left";
      return expressionFault(node.base) || expressionFault(node.exponent);
    case "Juxt": return sideBySide(node.factors);
    case "Frac": return fractionExpression(node.num, node.den);
    case "Sum": return sumFault(node);
    case "Product":
      return opsOf(node).indexOf("÷") >= 0 ? "a division is not written as a fraction" : "a product is not multiplied out";
  }
  const below = children(node);
  if (!below.length || !isExpression(node)) return "it is not an expression";
  return first(below, expressionFault);
}
function sideBySide(factors) {
  const letters = {};
  let roots = 0;
  for (let place = 0; place < factors.length; place++) {
    const factor = factors[place], inner = bareOf(factor);
    if (inner.k === "Neg") return "a minus sign stands inside the product";
    if (inner.k === "Root" && !hasLetters(inner)) roots++;
    if (!hasLetters(factor) && !is(inner, "Root", "Sum")) {
      if (place) return "two numbers are left to multiply";
      if (inner.k === "Int" && inner.n < TWO) return `a factor ${inner.n} is left`;
    } else if (factor.k === "Bracket" && inner.k !== "Sum") return "a bracket is not needed";
    const fault = expressionFault(factor);
    if (fault) return fault;
    const base = factor.k === "Power" ? bareOf(factor.base) : inner;
    if (base.k === "Sym") letters[base.name] = (letters[base.name] || 0) + 1;
  }
  if (Object.values(letters).some((n) => n > 1)) return "a letter stands twice in one product";
  return roots > 1 ? "two roots are left to multiply" : "";
}
const negativePower = (part) => part.k === "Power" && bareOf(part.exponent).k === "Neg";
function fractionExpression(top, bottom) {
  const fault = expressionFault(top) || expressionFault(bottom);
  if (fault) return fault;
  if (eq(bareOf(bottom), Int(1))) return ONE_BELOW;
  if (bareOf(bottom).k === "Neg") return "the minus sign stands in the denominator";
  const list = [...walk(top), ...walk(bottom)];
  if (list.some((part) => part.k === "Frac")) return "a fraction stands inside a fraction";
  if (list.some(negativePower)) return "a negative power is left in a fraction";
  let above, below;
  try { above = algebra(top).top; below = algebra(bottom).top; } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    return eq(bareOf(top), bareOf(bottom)) ? CANCELS : "";
  }
  if (!below.size) return DIVIDES_BY_ZERO;
  if (!above.size) return "a fraction that is 0 is left";
  const contents = [wholeContent(above), wholeContent(below)];
  if (contents[0] === ZERO || contents[1] === ZERO) {
    const one = above.values().next().value[1].abs().is(F(1));
    return hasLetters(bottom) || one || above.size > 1 ? "" : "a division is left to do";
  }
  if (gcdAll(contents) !== ONE) return CANCELS;
  const shared = commonLetters(below);
  return Array.from(commonLetters(above)).some((name) => shared.has(name)) ? CANCELS : "";
}
function sumFault(node) {
  if (node.rest.some(([, term]) => bareOf(term).k === "Neg")) return "two signs stand together";
  const seen = [], bodies = new Set();
  for (const term of sidesOf(node)) {
    const fault = expressionFault(term);
    if (fault) return fault;
    if (eq(term, Int(0))) return "a term 0 is left";
    let quotient;
    try { quotient = algebra(term); } catch (error) {
      if (!(error instanceof NotationError)) throw error;
      const body = termBody(term).id;
      if (bodies.has(body)) return LIKE_TERMS;
      bodies.add(body);
      continue;
    }
    if (seen.some((earlier) => proportional(quotient, earlier))) return LIKE_TERMS;
    seen.push(quotient);
  }
  return "";
}
function termBody(term) {
  const node = bareOf(term);
  if (node.k === "Neg") return termBody(node.of);
  if (node.k === "Frac" && node.den.k === "Int") return termBody(node.num);
  if (node.k === "Juxt" && node.factors.length > 1) {
    const [lead, ...rest] = node.factors;
    const fraction = lead.k === "Bracket" && lead.of.k === "Frac" && lead.of.num.k === "Int" && lead.of.den.k === "Int";
    if (is(lead, "Int", "Dec", "Mixed") || fraction) return rest.length === 1 ? rest[0] : Juxt(rest);
  }
  return node;
}
function simplifiedFault(node) {
  const fault = expressionFault(node);
  if (fault) return fault;
  for (const part of walk(node)) {
    if (part.k === "Sum") {
      const terms = sidesOf(part);
      if (terms.some(multipliedBracket)) return "a bracket is left to multiply out";
      if (terms.filter(dividedByLetters).length > 1) return "fractions are left to put over one denominator";
    } else if (part.k === "Frac") {
      let above, below;
      try { above = algebra(part.num).top; below = algebra(part.den).top; } catch (error) {
        if (!(error instanceof NotationError)) throw error;
        continue;
      }
      if (shareAFactor(above, below)) return CANCELS;
    }
  }
  return "";
}
function dividedByLetters(term) {
  term = bareOf(term);
  term = term.k === "Neg" ? bareOf(term.of) : term;
  return term.k === "Frac" && hasLetters(term.den);
}
function singleFractionFault(node) {
  let inner = bareOf(node);
  inner = inner.k === "Neg" ? bareOf(inner.of) : inner;
  const fractions = walk(node).filter((part) => part.k === "Frac");
  const fits = inner.k === "Frac" ? fractions.length === 1 && eq(fractions[0], inner) : !fractions.length;
  return fits ? simplifiedFault(node) : "it is not a single fraction";
}
function expandedFault(node) {
  node = bareOf(node);
  return walk(node).some(multipliedBracket) ? "a bracket is left to multiply out" : expressionFault(node);
}
function multipliedBracket(node) {
  const bracket = (part) => part.k === "Bracket" && part.of.k === "Sum";
  if (bracket(node) || (node.k === "Power" && bracket(node.base))) return true;
  if (node.k === "Neg") return multipliedBracket(node.of);
  if (node.k === "Juxt") return node.factors.some(multipliedBracket);
  return node.k === "Frac" && is(node.num, "Juxt", "Power") && multipliedBracket(node.num);
}

function powerFault(node) {
  node = bareOf(node);
  if (node.k === "Neg" && bareOf(node.of).k !== "Neg") return powerFault(node.of);
  if (is(node, "Product", "Juxt")) return "the powers are not put together";
  if (node.k === "Frac" && [node.num, node.den].some((side) => bareOf(side).k === "Power")) {
    return "the powers are not put together";
  }
  if (node.k === "Power") {
    const base = bareOf(node.base), exponent = bareOf(node.exponent);
    if (base.k === "Power") return "a power stands inside a power";
    return baseFault(base) || exponentFault(exponent);
  }
  return "it is not a power";
}
function baseFault(base) {
  const inner = base.k === "Neg" ? bareOf(base.of) : base;
  if (is(inner, "Int", "Dec", "Sym")) return "";
  if (inner.k === "Frac") {
    const letters = bareOf(inner.num).k === "Sym" || bareOf(inner.den).k === "Sym";
    return letters ? simplifiedFault(inner) : lowestTerms(inner);
  }
  return "the base of the power is not one number or letter";
}
function exponentFault(exponent) {
  if (ZERO_OR_ONE(exponent)) return "a power of 0 or 1 is left";
  if (!integerFault(exponent) || exponent.k === "Sym") return "";
  const inner = exponent.k === "Neg" ? bareOf(exponent.of) : exponent;
  return inner.k === "Frac" ? lowestTerms(exponent) : "the power is not worked out";
}
function factorsOf(node) {
  node = bareOf(node);
  if (node.k === "Product") {
    if (opsOf(node).some((op) => op !== "×")) return NOT_A_PRODUCT;
    return sidesOf(node).reduce((all, side) => all.concat(side.k === "Juxt" ? side.factors : [side]), []);
  }
  return node.k === "Juxt" ? node.factors : [node];
}
function productFault(node) {
  const factors = factorsOf(node);
  if (typeof factors === "string") return factors;
  if (factors.some((factor) => bareOf(factor).k === "Power")) {
    return factors.length < 2 ? NOT_A_PRODUCT : "a power is left to write out";
  }
  if (factors.length < 2) return NOT_A_PRODUCT;
  for (const factor of factors) {
    let inner = bareOf(factor);
    inner = inner.k === "Neg" ? bareOf(inner.of) : inner;
    if (!is(inner, "Int", "Dec", "Sym", "Frac")) return "its factors are not all single numbers or letters";
    const fault = inner.k === "Frac" ? lowestTerms(inner) : "";
    if (fault) return fault;
    if (eq(inner, Int(1))) return "a factor 1 is left";
  }
  return "";
}
function powersFault(node) {
  const inner = bareOf(node), factors = factorsOf(inner.k === "Neg" ? inner.of : inner);
  if (typeof factors === "string") return factors;
  const seen = new Set();
  for (let factor of factors) {
    factor = bareOf(factor);
    const base = factor.k === "Power" ? bareOf(factor.base) : factor;
    if (factor.k === "Power") {
      const fault = powerFault(factor);
      if (fault) return fault;
    } else if (baseFault(base)) return "it is not a product of powers";
    if (eq(base, Int(1))) return "a factor 1 is left";
    if (seen.has(base.id)) return `${shownLine(base)} stands there twice: write it as one power`;
    seen.add(base.id);
  }
  return "";
}
function primePowersFault(node) {
  const factors = factorsOf(node);
  if (typeof factors === "string") return factors;
  for (let factor of factors) {
    factor = bareOf(factor);
    const base = factor.k === "Power" ? bareOf(factor.base) : factor;
    if (base.k !== "Int" || node.k === "Juxt") return "it is not a product of prime numbers";
    if (!isPrime(base.n)) {
      return `${base.n <= BigInt(LARGEST_PRIME) ? base.n : "one of its numbers"} is not a prime number`;
    }
    if (factor.k === "Power") {
      const exponent = bareOf(factor.exponent);
      if (exponent.k !== "Int" || ZERO_OR_ONE(exponent)) return "its powers are not whole numbers from 2 up";
    }
  }
  return powersFault(node);
}
function positiveIndicesFault(node) {
  return walk(node).some(negativePower) ? "a negative power is left" : simplifiedFault(node);
}
function factorisedFault(node) {
  node = bareOf(node);
  node = node.k === "Neg" ? bareOf(node.of) : node;
  let factors;
  if (node.k === "Juxt") factors = node.factors;
  else if (node.k === "Power" && node.base.k === "Bracket" && node.exponent.k === "Int" && node.exponent.n > ONE) factors = [node];
  else if (node.k === "Product" && opsOf(node).every((op) => op === "×")) {
    return "a product of factors is written without times signs";
  } else return "it is not a product of factors";
  const fault = sideBySide(factors);
  if (fault) return fault;
  for (const factor of factors) {
    const base = factor.k === "Power" ? factor.base : factor;
    if (base.k !== "Bracket" || base.of.k !== "Sum") continue;
    let quotient;
    try { quotient = algebra(base.of); } catch (error) {
      if (!(error instanceof NotationError)) throw error;
      continue;
    }
    if (!polyEqual(quotient.bottom, poly([[UNIT, F(1)]]))) return `${shownLine(base.of)} still holds a fraction`;
    const content = wholeContent(quotient.top);
    if (!content && quotient.top.size > 1) return `${shownLine(base.of)} still holds a decimal`;
    if (content !== ONE || commonLetters(quotient.top).size) return `${shownLine(base.of)} has a common factor left`;
    try {
      if (splits(quotient.top)) return `${shownLine(base.of)} can be factorised further`;
    } catch (error) {
      if (error instanceof TooLarge) return "it is too long for the tool to tell whether it is fully factorised";
      throw error;
    }
  }
  return "";
}

function solvedFor(node) {
  node = bareOf(node);
  if (node.k !== "Relation" || node.rest.length !== 1) return NOT_SOLVED;
  let left = bareOf(node.first), right = bareOf(node.rest[0][1]);
  if (left.k !== "Sym" && !hasLetters(left)) [left, right] = [right, left];
  if (left.k !== "Sym") return NOT_SOLVED;
  return node.rest[0][0] === "=" ? right : "the sign is not =";
}
function solutionFault(node) {
  const right = solvedFor(node);
  return typeof right === "string" ? right : numberFault(right) && amountFault(right);
}
function inequalityFault(node) {
  if (node.k === "Either") return first(node.parts, inequalityFault);
  if (node.k !== "Relation") return NOT_SOLVED;
  const ops = opsOf(node);
  if (ops.some((op) => op === "=" || op === "≠")) return "the sign is not an inequality sign";
  const sides = sidesOf(node).map(bareOf);
  if (sides.length === 2 && sides[0].k !== "Sym") sides.reverse();
  let ends;
  if (sides.length === 3 && sides[1].k === "Sym") {
    const all = (...signs) => ops.every((op) => signs.indexOf(op) >= 0);
    if (!all("<", "≤") && !all(">", "≥")) return "its two signs do not point the same way";
    ends = [sides[0], sides[2]];
  } else if (sides.length === 2 && sides[0].k === "Sym") ends = [sides[1]];
  else return NOT_SOLVED;
  return first(ends, (end) => numberFault(end) && amountFault(end));
}
function rootsFault(node) {
  if (is(node, "Either", "Listing")) return first(node.parts, rootsFault);
  const right = solvedFor(node);
  if (typeof right === "string") return right;
  return hasLetters(right) ? expressionFault(right) : finishedNumber(right);
}
function subjectFault(node) {
  const NOT_ONE = "it is not one letter, an equals sign and an expression";
  if (node.k === "Either") return first(node.parts, subjectFault);
  if (node.k !== "Relation" || node.rest.length !== 1) return NOT_ONE;
  const left = bareOf(node.first), right = bareOf(node.rest[0][1]);
  if (left.k !== "Sym") return NOT_ONE;
  if (node.rest[0][0] !== "=") return "the sign is not =";
  if (symbols(right).has(left.name)) return `${left.name} stands on both sides`;
  return expressionFault(right);
}
function lineFault(node) {
  if (node.k !== "Listing" || node.parts.length !== 2 || node.parts[0].k !== "Label") {
    return "it is not a line and a right answer";
  }
  const result = node.parts[1];
  if (result.k === "Relation") return rootsFault(result);
  if (result.k === "Ratio") return ratioFault(result);
  return hasLetters(result) ? expressionFault(result) : finishedNumber(result);
}
const FORMS = {
  integer: integerFault, number: numberFault, fraction: fractionFault, "lowest-terms": lowestTerms,
  improper: improperFault, mixed: mixedFault, simplest: simplestFault, decimal: decimalFault,
  percentage: percentageFault, ratio: ratioFault, "one-to-n": toOne(0), "n-to-one": toOne(1),
  money: moneyFault, quantity: quantityFault, amount: amountFault, value: valueFault,
  rounded: roundedFault, surd: surdFault, "standard-form": standardFormFault,
  "prime-factors": primeFactorsFault, "prime-powers": primePowersFault, power: powerFault,
  powers: powersFault, product: productFault, expression: expressionFault,
  simplified: simplifiedFault, "single-fraction": singleFractionFault,
  "positive-indices": positiveIndicesFault, expanded: expandedFault, factorised: factorisedFault,
  solution: solutionFault, inequality: inequalityFault, roots: rootsFault, subject: subjectFault,
  "nth-term": (node) => (subset(symbols(node), new Set(["n"])) ? simplifiedFault(node) : "its letter is not n"),
  list: (node) => (node.k === "Listing" ? "" : "it is not a list"),
  point: (node) =>
    node.k === "Listing" && node.parts.length === 2 ? first(node.parts, amountFault) : "it is not a pair of coordinates",
  amounts: (node) => (node.k === "Listing" ? first(node.parts, amountFault) : "it is not a list of amounts"),
  sign: (node) => (node.k === "Relation" && "<>=".indexOf(node.rest[0][0]) >= 0
    ? "" : "it is not two numbers with a sign between"),
  "true-or-false": (node) => (node.k === "Label" && /^(true|false)$/i.test(node.text) ? "" : "it is neither true nor false"),
  "line-and-result": lineFault,
  pairs: (node) => (node.k === "Listing" && node.parts.every((part) => part.k === "Label")
    ? "" : "it is not a list of pairs"),
  name: (node) => (node.k === "Label" ? "" : "it does not name one of the choices"),
};
const formFault = (form, node) => FORMS[form](node);
