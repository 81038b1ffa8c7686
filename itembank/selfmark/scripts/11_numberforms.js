// The forms numbers may have to take; a rule says what keeps a tree from its form
// (itembank/items/forms/number_forms and value_forms).
const TWO_MINUSES = "two minus signs make a plus", ONE_BELOW = "the denominator is 1";
const NOT_LOWEST = "the fraction is not in its lowest terms", DIVIDES_BY_ZERO = "it divides by zero";
const NOT_WHOLE = "its numerator and denominator are not both whole numbers";
const LARGEST_PRIME = 1000000;

function bareOf(node) {
  while (node.k === "Bracket") node = node.of;
  return node;
}
function unsigned(node) {
  node = bareOf(node);
  return node.k === "Neg" ? bareOf(node.of) : node;
}
function sortOf(node) {
  const of = unsigned(node);
  const said = {
    Int: "it is a whole number", Dec: "it is a decimal", Mixed: "it is a mixed number",
    Frac: "it is a fraction", Percent: "it is a percentage", Money: "it is a sum of money",
    Quantity: "it has a unit", Ratio: "it is a ratio",
  }[of.k];
  if (said) return said;
  if (isOperation(of) && !hasLetters(node)) {
    return hasAny(node, "Root") ? "it has a root in it" : "it is not worked out";
  }
  return hasLetters(node) ? "it has a letter in it" : "it is not a number";
}
function integerFault(node) {
  if (unsigned(node).k === "Neg") return TWO_MINUSES;
  return unsigned(node).k === "Int" ? "" : "it is not a whole number";
}
// [numerator, denominator], or a text that says what is wrong.
function wholeParts(node) {
  const inner = unsigned(node);
  if (inner.k !== "Frac") return inner.k === "Neg" ? TWO_MINUSES : sortOf(node);
  const top = bareOf(inner.num), bottom = bareOf(inner.den);
  const signs = [bareOf(node), top, bottom].map((part) => part.k === "Neg");
  const above = unsigned(top), below = unsigned(bottom);
  if (above.k !== "Int" || below.k !== "Int") return NOT_WHOLE;
  if (!below.n) return DIVIDES_BY_ZERO;
  const minuses = signs.filter(Boolean).length;
  if (minuses > 1) return TWO_MINUSES;
  if (signs[2]) return "the minus sign stands in the denominator";
  return [minuses ? -above.n : above.n, below.n];
}
function lowestTerms(node) {
  const two = wholeParts(node);
  if (typeof two === "string") return two;
  if (gcd2(two[0], two[1]) !== ONE) return NOT_LOWEST;
  return two[1] === ONE ? ONE_BELOW : "";
}
const numberFault = (node) => (integerFault(node) ? lowestTerms(node) : "");
function improperFault(node) {
  const fault = lowestTerms(node);
  if (!fault && exact(node).abs().less(F(1))) return "its numerator is smaller than its denominator";
  return fault;
}
function mixedFault(node) {
  node = unsigned(node);
  if (node.k !== "Mixed") return sortOf(node);
  if (!(ZERO < node.num && node.num < node.den) || node.whole < ONE) {
    return "its fraction part is not a proper fraction";
  }
  return lowestTerms(Frac(Int(node.num), Int(node.den)));
}
function simplestFault(node) {
  const inner = unsigned(node);
  if (inner.k === "Mixed") return mixedFault(inner);
  if (inner.k === "Frac") {
    const fault = lowestTerms(node);
    if (fault) return fault;
    return F(1).less(exact(inner).abs()) ? "it is an improper fraction" : "";
  }
  return integerFault(node) && (inner.k === "Neg" ? TWO_MINUSES : sortOf(node));
}
function fractionFault(node) {
  const two = wholeParts(node);
  return typeof two === "string" ? two : "";
}
function decimalFault(node) {
  const inner = unsigned(node);
  if (inner.k === "Int") return "";
  if (inner.k !== "Dec") return inner.k === "Neg" ? TWO_MINUSES : sortOf(node);
  return !inner.recurring && (!inner.places || inner.places.endsWith("0")) ? "it ends in a 0 that is not needed" : "";
}
const finishedFault = (node) => (unsigned(node).k === "Dec" ? decimalFault(node) : simplestFault(node));
function percentageFault(node) {
  node = unsigned(node);
  return node.k === "Percent" ? finishedFault(node.of) : sortOf(node);
}
function ratioFault(node) {
  node = bareOf(node);
  if (node.k !== "Ratio") return "it is not a ratio";
  const list = node.parts.map(bareOf);
  if (list.some((part) => part.k !== "Int" || part.n <= ZERO)) return "its parts are not all whole numbers";
  return gcdAll(list.map((part) => part.n)) === ONE ? "" : "the ratio is not in its simplest form";
}
const toOne = (place) => (node) => {
  node = bareOf(node);
  if (node.k !== "Ratio" || node.parts.length !== 2) return "it is not a ratio of two parts";
  if (!eq(bareOf(node.parts[place]), Int(1))) return `the ${["first", "second"][place]} part is not 1`;
  const other = bareOf(node.parts[1 - place]);
  return other.k === "Frac" ? lowestTerms(other) : finishedFault(other);
};
function moneyFault(node) {
  node = unsigned(node);
  if (node.k !== "Money") return "it is not a sum of money";
  const amount = node.amount;
  if (node.sign === "p") return integerFault(amount);
  if (amount.k === "Int") return "";
  const both = amount.k === "Dec" && amount.places.length === 2 && !amount.recurring;
  return both ? "" : "pounds and pence are not given to two places";
}
function quantityFault(node) {
  node = unsigned(node);
  if (node.k === "MixedUnits") return carryFault(node);
  return node.k === "Quantity" ? finishedFault(node.amount) : "the unit is missing";
}
function amountFault(node) {
  const inner = unsigned(node);
  if (inner.k === "Money") return moneyFault(node);
  if (is(inner, "Quantity", "MixedUnits")) return quantityFault(node);
  return finishedFault(node);
}

function valueFault(node) {
  const inner = unsigned(node);
  switch (inner.k) {
    case "Money": case "Quantity": case "Percent": {
      const of = inner.k === "Percent" ? inner.of : inner.amount;
      if (is(bareOf(of), "Money", "Quantity", "Percent")) return "it has two units";
      if (inner.k === "Money" && unsigned(of).k === "Frac") return "a sum of money is not written as a fraction";
      if (of.k === "Dec" && inner.k === "Money" && inner.sign === "£" && of.places.length === 1) {
        return "pounds and pence are not given to two places";
      }
      return valueFault(of);
    }
    case "MixedUnits": return carryFault(inner);
    case "Int": case "Dec": case "ClockTime": return "";
    case "Mixed": return inner.num < inner.den ? "" : "its fraction part is not a proper fraction";
    case "Neg": return TWO_MINUSES;
    case "Frac": {
      const two = wholeParts(node);
      if (typeof two !== "string") return undividedParts(two);
      if (two === DIVIDES_BY_ZERO || two === TWO_MINUSES) return two;
    }
  }
  if (!standardFormFault(node)) return "";
  return surdFaults(node, false) ? "it is not worked out" : "";
}
function undividedParts([top, bottom]) {
  if (bottom === ONE) return ONE_BELOW;
  return top % bottom ? "" : "the division is not done";
}
function surdFaults(node, strict) {
  const outer = node;
  node = unsigned(node);
  if (node.k === "Neg") return TWO_MINUSES;
  if (node.k === "Frac") {
    const two = wholeParts(outer);
    if (typeof two === "string") {
      const bottom = bareOf(node.den);
      if (two !== NOT_WHOLE) return two;
      if (bottom.k !== "Int") return "the denominator is not a whole number";
      if (bottom.n < TWO) return "the denominator is not more than 1";
      return surdFaults(node.num, strict) || (strict ? cancelsWith(node.num, bottom.n) : "");
    }
  } else if (node.k === "Juxt" && node.factors.length === 2 && node.factors[1].k === "Bracket" && node.factors[1].of.k === "Sum") {
    const inside = node.factors[1].of;
    return takenOut(node.factors[0]) || surdFaults(inside, strict) || allTakenOut(inside);
  }
  const terms = node.k === "Sum" ? sidesOf(node) : [node];
  if (terms.slice(1).some((term) => bareOf(term).k === "Neg")) return "two signs stand together";
  const seen = new Set();
  for (const term of node.k === "Sum" ? terms : [outer]) {
    const [root, fault] = surdTerm(term, strict);
    if (fault) return fault;
    if (seen.has(root)) return "like terms are not collected";
    seen.add(root);
  }
  return "";
}
function takenOut(factor) {
  if (factor.k === "Int" && factor.n > ONE) return "";
  if (factor.k === "Bracket" && factor.of.k === "Frac") return lowestTerms(factor.of);
  return "a bracket is left to multiply out";
}
function allTakenOut(inside) {
  return wholeContent(algebra(inside).top) > ONE ? "the bracket has a common factor left" : "";
}
function surdTerm(node, strict) {
  const outer = node, one = "1 1";
  node = unsigned(node);
  if (node.k === "Int") return [one, ""];
  if (node.k === "Frac") {
    const two = wholeParts(outer);
    if (typeof two !== "string") return [one, strict ? lowestTerms(outer) : undividedParts(two)];
  }
  if (node.k === "Root" && node.of.k === "Int") {
    return [`${node.of.n} ${node.index}`, radicandFault(node.of.n, node.index, strict)];
  }
  const pair = node.k === "Juxt" && node.factors.length === 2 ? node.factors
    : node.k === "Product" && node.rest.length === 1 && node.rest[0][0] === "×" ? [node.first, node.rest[0][1]] : null;
  if (pair && pair[1].k === "Root" && pair[1].of.k === "Int") {
    const [factor, root] = pair;
    const fraction = node.k === "Juxt" ? factor.k === "Bracket" && factor.of : factor;
    const c = factor.k === "Int" ? factor.n
      : fraction && fraction.k === "Frac" && fraction.num.k === "Int" && fraction.den.k === "Int" ? fraction.num.n : null;
    if (c !== null && c > ZERO && !eq(factor, Int(1))) {
      const cancelled = !strict || factor.k === "Int" || !lowestTerms(bareOf(factor));
      const fault = cancelled ? "" : NOT_LOWEST;
      return [`${root.of.n} ${root.index}`, fault || radicandFault(root.of.n, root.index, strict)];
    }
  }
  if (node.k === "Frac" && node.den.k === "Int" && node.den.n > ONE) {
    const [root, fault] = surdTerm(node.num, strict);
    return [root, fault || (strict ? cancelsWith(node.num, node.den.n) : "")];
  }
  return ["0 0", "it is not a sum of whole numbers times roots"];
}
function radicandFault(big, index, strict) {
  if (!(ONE < big && big <= BigInt(LARGEST_RADICAND))) {
    return "the number under the root is not from 2 to a thousand million";
  }
  const n = Number(big), sign = ROOT_SIGNS[index], k = Math.round(Math.pow(n, 1 / index));
  if (Math.pow(k, index) === n) return `${sign}${n} is a whole number`;
  if (!strict) return "";
  let simple = true;
  if (index === 2) simple = squareFree(n)[0] === 1;
  else for (let j = 2; j <= k; j++) if (n % Math.pow(j, index) === 0) simple = false;
  return simple ? "" : `${sign}${n} can be simplified`;
}
function cancelsWith(top, bottom) {
  let content;
  try { content = wholeContent(algebra(top).top); } catch (error) {
    if (error instanceof NotationError) return "";
    throw error;
  }
  return gcd2(content, bottom) > ONE ? "the fraction can be cancelled" : "";
}
function standardFormFault(node) {
  const outer = node, ten = (part) => part.k === "Power" && eq(part.base, Int(10));
  node = unsigned(node);
  // A power of ten with a unit has no field of its own for it, so its exponent is the power's.
  const last = node.k === "Product" && node.rest.length === 1 && node.rest[0][0] === "×" ? node.rest[0][1] : null;
  const power = last && (last.k === "Quantity" ? last.amount : last);
  if (!power || !ten(power)) return "it is not a number times a power of 10";
  if (integerFault(power.exponent)) return "the power of 10 is not a whole number";
  if (bareOf(outer).k === "Neg" && bareOf(node.first).k === "Neg") return TWO_MINUSES;
  const first = unsigned(node.first);
  const digits = first.k === "Dec" ? first.whole : String(first.k === "Int" ? first.n : 0);
  return digits.length !== 1 || digits === "0" ? "the first number is not at least 1 and less than 10" : "";
}
const surdFault = (node) => surdFaults(node, true);
function primeFactorsFault(node) {
  node = bareOf(node);
  let factors = [node];
  if (node.k === "Product") {
    if (opsOf(node).some((op) => op !== "×")) return "it is not a product";
    factors = sidesOf(node);
  }
  let powers = 0;
  for (const factor of factors) {
    let p;
    if (factor.k === "Int") p = factor.n;
    else if (factor.k === "Power" && factor.base.k === "Int" && factor.exponent.k === "Int" && factor.exponent.n > ONE) {
      p = factor.base.n;
      powers++;
    } else return "it is not a product of prime numbers";
    if (!isPrime(p)) return `${p <= BigInt(LARGEST_PRIME) ? p : "one of its numbers"} is not a prime number`;
  }
  const bases = new Set(factors.map((f) => (f.k === "Power" ? f.base : f).id));
  return powers && bases.size < factors.length ? "a prime stands there twice: write it as one power" : "";
}
function isPrime(big) {
  if (!(ONE < big && big <= BigInt(LARGEST_PRIME))) return false;
  const n = Number(big);
  for (let k = 2; k * k <= n; k++) if (n % k === 0) return false;
  return true;
}
function roundedFault(node) {
  let inner = unsigned(node);
  if (inner.k === "Money") return amountFault(inner);
  if (is(inner, "Quantity", "Percent")) {
    node = inner.k === "Percent" ? inner.of : inner.amount;
    inner = unsigned(node);
  }
  if (inner.k === "Dec") return inner.recurring ? "a recurring decimal is not rounded" : "";
  if (inner.k === "Int" || !standardFormFault(node)) return "";
  return inner.k === "Neg" ? TWO_MINUSES : sortOf(node);
}
function finishedNumber(node) {
  const inner = unsigned(node);
  switch (inner.k) {
    case "Dec":
      if (!inner.recurring && !inner.places.replace(/^0+|0+$/g, "")) {
        return "a whole number is written with a 0 after the point";
      }
      return "";
    case "MixedUnits": return carryFault(inner);
    case "Int": case "ClockTime": return "";
    case "Neg": return TWO_MINUSES;
    case "Money": case "Quantity": return finishedNumber(inner.amount);
    case "Percent": return finishedNumber(inner.of);
    case "Mixed":
      if (inner.num >= inner.den) return "its fraction part is not a proper fraction";
      return gcd2(inner.num, inner.den) === ONE ? "" : "a fraction is not in its lowest terms";
    case "Frac":
      if (typeof wholeParts(node) !== "string") return lowestTerms(node);
  }
  if (hasAny(node, "Root")) return surdFault(node);
  return standardFormFault(node) && "a calculation is left to work out";
}
